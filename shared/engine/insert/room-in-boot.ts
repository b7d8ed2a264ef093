/** Does the insert fit into the boot: height at the heel, depth over the toes. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'
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
/** Of those, what takes depth over the toes; the others tilt or hollow. */
const thickUnderForefoot: readonly string[] = ['forefoot-stiffener', 'forefoot-cushion']
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
	return [
		conflictOn(
			side,
			state('insert.volume', {
				side,
				addedMm: rounded(addedMm, 1),
				limitMm,
				parts: parts.map(({ element, heightMm }) => ({
					element,
					heightMm: rounded(heightMm, 1),
				})),
				coverMm,
				linerMm,
			}),
			parts.map(({ element }) => element),
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
		.filter(({ element }) => thickUnderForefoot.includes(element))
		.reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
	if (depthMm === undefined || addedMm <= depthMm) return []
	return [
		conflictOn(
			side,
			state('insert.toe-depth', {
				side,
				addedMm: rounded(addedMm, 1),
				depthMm: rounded(depthMm, 1),
			}),
			underForefoot.map(({ element }) => element),
			practiceBasis('room over the toes'),
		),
	]
}
