/**
 * Whether a model at a size has a feature: true, false, or undefined where the shelf or the visit
 * does not say.
 */
import type { StudDistance } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Model, offsetOf } from '../visit/shelf.ts'
import type { Feature } from '../visit/terms.ts'

export interface Fitted {
	model: Model
	widthMarginMm?: number | undefined
	depthMarginMm?: number | undefined
	joints: readonly StudDistance[]
}
type Has = (one: Fitted, limit: Limits) => boolean | undefined
/** The threshold values the features need, read once for a whole shelf. */
export interface Limits {
	tight: number
	loose: number
	deep: number
	raised: number
	low: number
	light: number
	short: number
	many: number
	bladed: number
}
/**
 * @param offsetMinMm the least offset the ankle room asks for: where known, it says what counts as
 * raised
 */
export function limitsOf(protocol: Protocol, offsetMinMm?: number): Limits {
	return {
		tight: protocol.value('footwear.widthTightMm'),
		loose: protocol.value('footwear.widthLooseMm'),
		deep: protocol.value('footwear.depthDeepMm'),
		raised: offsetMinMm ?? protocol.value('footwear.raisedOffsetMm'),
		low: protocol.value('footwear.lowOffsetMm'),
		light: protocol.value('footwear.lightG'),
		short: protocol.value('footwear.shortStudMm'),
		many: protocol.value('footwear.manyStuds'),
		bladed: protocol.value('footwear.bladedShare'),
	}
}
const is =
	<K extends keyof Model>(key: K, ...values: Model[K][]): Has =>
	({ model }) =>
		model[key] === undefined ? undefined : values.includes(model[key])
const when = (value: number | undefined, holds: (value: number) => boolean) =>
	value === undefined ? undefined : holds(value)
/** Soles without studs touch the ground all over: many contacts, none long, none bladed. */
const studs =
	(holds: (studs: NonNullable<Model['studs']>, limit: Limits) => boolean, without: boolean): Has =>
	({ model }, limit) =>
		model.studs === undefined
			? undefined
			: model.studs.length === 0
				? without
				: holds(model.studs, limit)
const clear =
	(joint: StudDistance['joint']): Has =>
	({ model, joints }) =>
		model.studs?.length === 0
			? true
			: joints.length === 0
				? undefined
				: joints
						.filter((distance) => distance.joint === joint)
						.every((distance) => distance.under.length === 0)
const bladedShare = (list: NonNullable<Model['studs']>) =>
	list.filter((stud) => stud.shape === 'blade').length / list.length
const tallest = (list: NonNullable<Model['studs']>) =>
	Math.max(...list.map((stud) => stud.heightMm))

/** Features not listed cannot be judged from what a shelf records. */
export const featureOf: Partial<Record<Feature, Has>> = {
	'wide-fitting': ({ widthMarginMm }, limit) => when(widthMarginMm, (mm) => mm >= limit.tight),
	'narrow-fitting': ({ widthMarginMm }, limit) => when(widthMarginMm, (mm) => mm < limit.tight),
	'deep-toe-box': ({ depthMarginMm }, limit) => when(depthMarginMm, (mm) => mm >= limit.deep),
	'deep-instep': is('instep', 'deep'),
	'soft-upper': is('upperSoftness', 'soft'),
	'smooth-forefoot-seams': is('forefootSeams', 'none', 'away-from-joints'),
	'firm-heel-counter': is('counterStiffness', 'firm'),
	'soft-heel-counter': is('counterStiffness', 'soft', 'none'),
	'high-heel-counter': is('counterHeight', 'high'),
	'low-heel-collar': is('collar', 'low', 'notched'),
	'padded-collar': is('paddedCollar', true),
	'raised-heel': ({ model }, limit) => when(offsetOf(model), (mm) => mm >= limit.raised),
	'low-heel': ({ model }, limit) => when(offsetOf(model), (mm) => mm <= limit.low),
	'full-length-cushioning': is('cushioning', 'full'),
	'wide-base': is('base', 'wide'),
	'stiff-forefoot': is('forefootStiffness', 'stiff'),
	'flexible-forefoot': is('forefootStiffness', 'flexible'),
	'torsional-stiffness': is('torsion', 'stiff'),
	'removable-liner': is('removableLiner', true),
	'low-mass': ({ model }, limit) => when(model.massG, (g) => g <= limit.light),
	'round-studs': studs((list) => list.every((stud) => stud.shape !== 'blade'), true),
	'bladed-studs': studs((list, limit) => bladedShare(list) >= limit.bladed, false),
	'many-studs': studs((list, limit) => list.length >= limit.many, true),
	'short-studs': studs((list, limit) => tallest(list) <= limit.short, true),
	'long-studs': studs((list, limit) => tallest(list) > limit.short, false),
	'stud-clear-of-first-joint': clear('first metatarsal head'),
	'stud-clear-of-fifth-metatarsal': clear('fifth metatarsal head'),
	'low-rotational-grip': ({ model }, limit) =>
		model.studs === undefined
			? undefined
			: model.studs.length === 0
				? true
				: model.sole !== 'soft-ground' &&
					bladedShare(model.studs) < limit.bladed &&
					tallest(model.studs) <= limit.short,
	'soft-ground-sole': is('sole', 'soft-ground'),
	'firm-ground-sole': is('sole', 'firm-ground'),
	'artificial-ground-sole': is('sole', 'artificial-ground'),
	'turf-sole': is('sole', 'turf'),
	'indoor-sole': is('sole', 'indoor'),
}
/** To avoid a wide fitting is to avoid one that is loose on this foot, not one that fits it. */
const avoided: Partial<Record<Feature, Has>> = {
	'wide-fitting': ({ widthMarginMm }, limit) => when(widthMarginMm, (mm) => mm > limit.loose),
}

/** @returns undefined where the feature cannot be judged */
export const hasFeature = (feature: Feature, one: Fitted, limit: Limits): boolean | undefined =>
	featureOf[feature]?.(one, limit)
export const hasAvoided = (feature: Feature, one: Fitted, limit: Limits): boolean | undefined =>
	(avoided[feature] ?? featureOf[feature])?.(one, limit)
