/**
 * Whether a model at a size has a feature: true, false, or undefined where the shelf or the visit
 * does not say.
 */
import type { StudDistance } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type JointName, type Model, offsetOf } from '../visit/shelf.ts'
import type { Feature } from '../visit/terms.ts'

/** A model at a size on a player: what its features are judged by. */
export interface Fitted {
	model: Model
	/** Over the wider foot, and over the toes. */
	widthMarginMm?: number | undefined
	depthMarginMm?: number | undefined
	/** Distances of the joints that count, either side. */
	joints: readonly StudDistance[]
}
type Has = (fitted: Fitted, limits: Limits) => boolean | undefined
/** The threshold values the features need, read once for a whole shelf. */
export interface Limits {
	tightMm: number
	looseMm: number
	deepMm: number
	raisedOffsetMm: number
	lowOffsetMm: number
	lightG: number
	shortStudMm: number
	manyStuds: number
	bladedShare: number
}
/**
 * @param offsetMinMm the least offset the ankle room asks for: where known, it says what counts as
 * raised
 */
export function limitsOf(protocol: Protocol, offsetMinMm?: number): Limits {
	return {
		tightMm: protocol.value('footwear.widthTightMm'),
		looseMm: protocol.value('footwear.widthLooseMm'),
		deepMm: protocol.value('footwear.depthDeepMm'),
		raisedOffsetMm: offsetMinMm ?? protocol.value('footwear.raisedOffsetMm'),
		lowOffsetMm: protocol.value('footwear.lowOffsetMm'),
		lightG: protocol.value('footwear.lightG'),
		shortStudMm: protocol.value('footwear.shortStudMm'),
		manyStuds: protocol.value('footwear.manyStuds'),
		bladedShare: protocol.value('footwear.bladedShare'),
	}
}
type Studs = NonNullable<Model['studs']>
/** A property that the shelf records is one of these values. */
const is =
	<Key extends keyof Model>(key: Key, ...values: Model[Key][]): Has =>
	({ model }) =>
		model[key] === undefined ? undefined : values.includes(model[key])
const when = (value: number | undefined, holds: (value: number) => boolean) =>
	value === undefined ? undefined : holds(value)
/** Soles without studs touch the ground all over: many contacts, none long, none bladed. */
const studs =
	(holds: (studs: Studs, limits: Limits, model: Model) => boolean, without: boolean): Has =>
	({ model }, limits) => {
		if (model.studs === undefined) return undefined
		return model.studs.length === 0 ? without : holds(model.studs, limits, model)
	}
const clear =
	(joint: JointName): Has =>
	({ model, joints }) => {
		if (model.studs?.length === 0) return true
		if (joints.length === 0) return undefined
		return joints
			.filter((distance) => distance.joint === joint)
			.every((distance) => distance.under.length === 0)
	}
const bladedShare = (list: Studs) =>
	list.filter((stud) => stud.shape === 'blade').length / list.length
const tallestMm = (list: Studs) => Math.max(...list.map((stud) => stud.heightMm))

/** Features not listed cannot be judged from what a shelf records. */
const featureOf: Partial<Record<Feature, Has>> = {
	'wide-fitting': ({ widthMarginMm }, limits) =>
		when(widthMarginMm, (marginMm) => marginMm >= limits.tightMm),
	'narrow-fitting': ({ widthMarginMm }, limits) =>
		when(widthMarginMm, (marginMm) => marginMm < limits.tightMm),
	'deep-toe-box': ({ depthMarginMm }, limits) =>
		when(depthMarginMm, (marginMm) => marginMm >= limits.deepMm),
	'deep-instep': is('instep', 'deep'),
	'soft-upper': is('upperSoftness', 'soft'),
	'smooth-forefoot-seams': is('forefootSeams', 'none', 'away-from-joints'),
	'firm-heel-counter': is('counterStiffness', 'firm'),
	'soft-heel-counter': is('counterStiffness', 'soft', 'none'),
	'high-heel-counter': is('counterHeight', 'high'),
	'low-heel-collar': is('collar', 'low', 'notched'),
	'padded-collar': is('paddedCollar', true),
	'raised-heel': ({ model }, limits) =>
		when(offsetOf(model), (offsetMm) => offsetMm >= limits.raisedOffsetMm),
	'low-heel': ({ model }, limits) =>
		when(offsetOf(model), (offsetMm) => offsetMm <= limits.lowOffsetMm),
	'full-length-cushioning': is('cushioning', 'full'),
	'wide-base': is('base', 'wide'),
	'stiff-forefoot': is('forefootStiffness', 'stiff'),
	'flexible-forefoot': is('forefootStiffness', 'flexible'),
	'torsional-stiffness': is('torsion', 'stiff'),
	'removable-liner': is('removableLiner', true),
	'low-mass': ({ model }, limits) => when(model.massG, (massG) => massG <= limits.lightG),
	'round-studs': studs((list) => list.every((stud) => stud.shape !== 'blade'), true),
	'bladed-studs': studs((list, limits) => bladedShare(list) >= limits.bladedShare, false),
	'many-studs': studs((list, limits) => list.length >= limits.manyStuds, true),
	'short-studs': studs((list, limits) => tallestMm(list) <= limits.shortStudMm, true),
	'long-studs': studs((list, limits) => tallestMm(list) > limits.shortStudMm, false),
	'stud-clear-of-first-joint': clear('first metatarsal head'),
	'stud-clear-of-fifth-metatarsal': clear('fifth metatarsal head'),
	'low-rotational-grip': studs(
		(list, limits, { sole }) =>
			sole !== 'soft-ground' &&
			bladedShare(list) < limits.bladedShare &&
			tallestMm(list) <= limits.shortStudMm,
		true,
	),
	'soft-ground-sole': is('sole', 'soft-ground'),
	'firm-ground-sole': is('sole', 'firm-ground'),
	'artificial-ground-sole': is('sole', 'artificial-ground'),
	'turf-sole': is('sole', 'turf'),
	'indoor-sole': is('sole', 'indoor'),
}
/** To avoid a wide fitting is to avoid one that is loose on this foot, not one that fits it. */
const avoided: Partial<Record<Feature, Has>> = {
	'wide-fitting': ({ widthMarginMm }, limits) =>
		when(widthMarginMm, (marginMm) => marginMm > limits.looseMm),
}

/** @returns undefined where the feature cannot be judged */
export const hasFeature = (feature: Feature, fitted: Fitted, limits: Limits): boolean | undefined =>
	featureOf[feature]?.(fitted, limits)
/** The same for a feature that is to be avoided. */
export const hasAvoided = (feature: Feature, fitted: Fitted, limits: Limits): boolean | undefined =>
	(avoided[feature] ?? featureOf[feature])?.(fitted, limits)
