/** The room that a proposed insert takes in a boot: what the match reckons with. */
import type { InsertElement, InsertResult } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'

/**
 * What an insert takes: its thickness under the forefoot and at the heel, mm; a cup also takes
 * length.
 */
export interface InsertVolume {
	forefootMm: number
	heelMm: number
	cup: boolean
}
/** Elements whose value is a thickness, mm. */
const underForefoot: readonly string[] = ['cover', 'forefoot-cushion', 'forefoot-stiffener']
const underHeel: readonly string[] = [
	'shell',
	'cover',
	'heel-cushion',
	'heel-raise',
	'leg-length-raise',
]
const thicknessMm = (elements: readonly InsertElement[], names: readonly string[]): number =>
	elements
		.filter((element) => names.includes(element.element))
		.reduce((totalMm, element) => totalMm + (element.value ?? 0), 0)
const fullLength = (elements: readonly InsertElement[]): boolean =>
	elements.some((element) => element.element === 'length' && element.choice === 'full')

/**
 * What the insert proposed would take in a boot, the larger of the two sides; undefined where none
 * is proposed.
 */
export function insertVolume(inserts: InsertResult): InsertVolume | undefined {
	const proposed = bothSides
		.map((side) => inserts[side])
		.filter((insert) => insert.state === 'proposed')
		.map((insert) => insert.elements.filter((element) => element.where !== 'trainer'))
	if (proposed.length === 0) return undefined
	return {
		forefootMm: Math.max(
			...proposed.map((elements) =>
				fullLength(elements) ? thicknessMm(elements, underForefoot) : 0,
			),
		),
		heelMm: Math.max(...proposed.map((elements) => thicknessMm(elements, underHeel))),
		cup: proposed.some((elements) => elements.some((element) => element.element === 'heel-cup')),
	}
}
