/** Does the insert fit into the boot: height at the heel, depth over the toes. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { conflictOn } from './conflict.ts'
import { practiceBasis, wordsFor } from './element-words.ts'
import type { InsertRoom } from './facts.ts'

const forefootElements: readonly string[] = [
	'forefoot-post-medial',
	'forefoot-post-lateral',
	'forefoot-stiffener',
	'forefoot-cushion',
	'first-head-aperture',
]
/** It needs an insert of full length. */
export const isUnderForefoot = ({ element }: InsertElement): boolean =>
	forefootElements.includes(element)
const stackedAtHeel: readonly string[] = ['shell', 'heel-cushion', 'heel-raise', 'leg-length-raise']
/** What a boot does not hold; nothing is said of toes whose room is not known. */
export const roomConflicts = (
	elements: readonly InsertElement[],
	room: InsertRoom | undefined,
	side: Side,
	protocol: Protocol,
): InsertConflict[] => [
	...heelHeight(elements, room, side, protocol),
	...toeDepth(elements, room?.depthOverToesMm, side),
]
/**
 * Height added at the heel in the boot: shell, cover, cushion and raises, less the liner that comes
 * out.
 */
function heelHeight(
	elements: readonly InsertElement[],
	room: InsertRoom | undefined,
	side: Side,
	protocol: Protocol,
): InsertConflict[] {
	const parts = elements.flatMap(({ element, value: heightMm }) =>
		stackedAtHeel.includes(element) && heightMm !== undefined ? [{ element, heightMm }] : [],
	)
	const covered = elements.some(({ element }) => element === 'cover')
	const coverMm = covered ? protocol.value('insert.coverBootMm') : 0
	const linerMm = room?.removableLiner ? (room.linerMm ?? 0) : 0
	const addedMm = parts.reduce((sumMm, { heightMm }) => sumMm + heightMm, 0) + coverMm - linerMm
	const limitMm = protocol.value('insert.raiseMaxMm')
	if (addedMm <= limitMm) return []
	const stack = [
		...parts.map(({ element, heightMm }) => `${wordsFor(element)} ${rounded(heightMm, 1)}`),
		`cover ${coverMm}`,
		linerMm > 0 ? `liner out ${linerMm}` : 'liner not counted',
	]
	return [
		conflictOn(
			side,
			'volume',
			parts.map(({ element }) => element),
			`The ${side} heel would stand ${rounded(addedMm, 1)} mm higher in the boot ` +
				`(${stack.join(', ')}), more than the ${limitMm} mm in use: thin the shell, take the ` +
				'liner out, or check heel hold and depth in the boot.',
			protocol.basis('height added at the heel', 'insert.raiseMaxMm'),
		),
	]
}
function toeDepth(
	elements: readonly InsertElement[],
	depthMm: number | undefined,
	side: Side,
): InsertConflict[] {
	const underForefoot = elements.filter(isUnderForefoot)
	const addedMm = underForefoot
		.filter(({ element, unit }) => unit?.startsWith('mm') && element !== 'first-head-aperture')
		.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
	if (depthMm === undefined || addedMm <= depthMm) return []
	return [
		conflictOn(
			side,
			'toe-depth',
			underForefoot.map(({ element }) => element),
			`The ${side} forefoot additions of ${rounded(addedMm, 1)} mm are more than the ` +
				`${rounded(depthMm, 1)} mm free over the toes in this boot: thinner additions or a ` +
				'deeper boot.',
			practiceBasis('room over the toes'),
		),
	]
}
