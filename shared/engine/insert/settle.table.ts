/**
 * What gives way to what in an insert, and in which order. Common practice, no source, unless a row
 * of the protocol stands behind it.
 */
import type { Strength } from '../protocol/basis.ts'
import type { ThresholdKey } from '../protocol/protocol.ts'
import type { ElementId } from '../words/en/insert-names.ts'

/** By what one of two is chosen: never traded first. */
export const settleRanks = ['safety', 'pain-now', 'strength'] as const
export type SettleRank = (typeof settleRanks)[number]
/** How strongly an element is called for, the weakest ground first. */
export const weakestFirst: readonly Strength[] = ['practice', 'expert', 'clinic', 'cross-sectional', 'cohort', 'trial', 'guideline', 'standard']
export interface OppositeRow {
	elements: readonly [ElementId, ElementId]
	/** They undo each other, or they do the same work twice. */
	why: 'undo' | 'same-work'
}
/** Never both on one foot: the ranks choose, and where they are equal neither is proposed. */
export const opposites: readonly OppositeRow[] = [
	{ elements: ['rearfoot-post-medial', 'rearfoot-post-lateral'], why: 'undo' },
	{ elements: ['rearfoot-post-medial', 'lateral-skive'], why: 'undo' },
	{ elements: ['medial-skive', 'rearfoot-post-lateral'], why: 'undo' },
	{ elements: ['medial-skive', 'lateral-skive'], why: 'undo' },
	{ elements: ['forefoot-post-medial', 'forefoot-post-lateral'], why: 'undo' },
	// a post under the first head jams the ray that the cut-out frees, and loads sore sesamoids
	{ elements: ['forefoot-post-medial', 'first-ray-cutout'], why: 'undo' },
	{ elements: ['forefoot-post-medial', 'first-head-aperture'], why: 'undo' },
	{ elements: ['first-ray-cutout', 'forefoot-stiffener'], why: 'undo' },
	{ elements: ['metatarsal-dome', 'forefoot-cushion'], why: 'same-work' },
]
/** What may be thinner in a boot, and to what; without a key it may be left out. */
export interface ThinnerRow {
	element: ElementId
	least?: ThresholdKey
	/** Below its usual least it is left out, since less of it does nothing. */
	wholeOrNone?: true
}
export const thinner: readonly ThinnerRow[] = [{ element: 'cover' }, { element: 'shell', least: 'insert.bootShellMinMm' }, { element: 'heel-cushion', wholeOrNone: true }, { element: 'forefoot-cushion', wholeOrNone: true }, { element: 'forefoot-stiffener', least: 'insert.stiffenerMinMm' }]
/**
 * Which of them give way together under the heel, tried in this order until the rest fits: comfort
 * first, what carries next, what treats last. The raise has what they leave.
 */
export const heelGiving: readonly (readonly ElementId[])[] = [['cover'], ['shell'], ['cover', 'shell'], ['heel-cushion'], ['cover', 'heel-cushion'], ['cover', 'shell', 'heel-cushion']]
/** The same over the toes. */
export const toeGiving: readonly (readonly ElementId[])[] = [['cover'], ['forefoot-cushion'], ['cover', 'forefoot-cushion'], ['cover', 'forefoot-stiffener'], ['cover', 'forefoot-cushion', 'forefoot-stiffener']]
/** What stands under the heel inside a boot besides a raise, and what takes depth over the toes. */
export const underHeel: readonly ElementId[] = ['shell', 'cover', 'heel-cushion', 'heel-raise', 'leg-length-raise']
export const overToes: readonly ElementId[] = ['cover', 'forefoot-cushion', 'forefoot-stiffener']
/** What only carries: with nothing to carry there is no insert. */
export const carriers: readonly ElementId[] = ['device', 'shell', 'heel-cup', 'cover', 'length']
