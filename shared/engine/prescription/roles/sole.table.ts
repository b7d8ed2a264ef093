/**
 * What a sole brings with it whatever the model, what no model of it has, and the feature that asks
 * for it; the trade's classes of soles, common practice, no source.
 */
import type { Feature, Sole } from '../../visit/terms.ts'

interface SoleRow {
	/** The feature of the wishes that names it. */
	feature?: Feature
	has: readonly Feature[]
	lacks: readonly Feature[]
	/** Studs, lugs or nubs: wishes about studs mean something. */
	studded: boolean
}
export const soleRows: Readonly<Record<Sole, SoleRow>> = {
	'soft-ground': {
		feature: 'soft-ground-sole',
		has: ['long-studs'],
		lacks: ['short-studs', 'many-studs', 'low-rotational-grip'],
		studded: true,
	},
	'firm-ground': { feature: 'firm-ground-sole', has: [], lacks: [], studded: true },
	'artificial-ground': {
		feature: 'artificial-ground-sole',
		has: ['many-studs', 'short-studs'],
		lacks: ['long-studs'],
		studded: true,
	},
	turf: {
		feature: 'turf-sole',
		has: ['many-studs', 'short-studs'],
		lacks: ['long-studs', 'bladed-studs'],
		studded: true,
	},
	indoor: { feature: 'indoor-sole', has: [], lacks: [], studded: false },
	trail: { has: [], lacks: [], studded: false },
	road: { has: [], lacks: [], studded: false },
}
/** Wishes that are about studs. */
export const studFeatures: readonly Feature[] = ['round-studs', 'bladed-studs', 'many-studs', 'short-studs', 'long-studs', 'stud-clear-of-first-joint', 'stud-clear-of-fifth-metatarsal', 'low-rotational-grip']
/** Wishes that are about the sole: the sole chosen answers them. */
export const soleFeatures: readonly Feature[] = ['soft-ground-sole', 'firm-ground-sole', 'artificial-ground-sole', 'turf-sole', 'indoor-sole']
