/**
 * What the shelf learns of pairs that were measured on the foot: what a model of a size truly measures
 * inside, beside what was listed. It learns what a person says, and nothing by itself. Pure.
 */
import { z } from 'zod'
import { digestOf } from '../../engine/plain/canonical.ts'
import { present } from '../../engine/plain/present.ts'
import type { MeasuredOfSize, Model, Shelf, ShelfSize } from '../../engine/visit/shelf.ts'
import { rounded } from '../../engine/visit/sides.ts'
import { sizeSystems } from '../../engine/visit/terms.ts'
import type { Pair, Visit } from '../../engine/visit/visit.ts'

/** A pair that was measured, without whose it is. */
export const measuredPairSchema = z.object({
	/** Tells the pair from others, so that it counts once; nobody is found by it. */
	of: z.string(),
	on: z.string(),
	model: z.string(),
	system: z.enum(sizeSystems),
	label: z.number(),
	fitting: z.string().optional(),
	insideLengthMm: z.number(),
	ballWidthMm: z.number().optional(),
})
export type MeasuredPair = z.infer<typeof measuredPairSchema>
/** What is answered about a measured pair. */
export const learnings = ['take-over', 'count-only', 'leave-out'] as const
export type Learning = (typeof learnings)[number]

function measured(pair: Pair, playerId: string, visitDate: string): MeasuredPair | undefined {
	const { id, sizeSystem: system, size: label, insideLengthMm, onFoot = {}, plannedAs } = pair
	const { model, fitting, lengthBy, insideWidthMm: ballWidthMm, tried: on = visitDate } = onFoot
	if (model === undefined || system === undefined || label === undefined) return undefined
	// what a label says was not measured, and what was not said may be what a label says
	const isMeasured = lengthBy === 'gauge' || lengthBy === 'liner'
	if (insideLengthMm === undefined || !isMeasured || plannedAs !== undefined) return undefined
	const of = digestOf({ playerId, pair: id })
	return present({ of, on, model, system, label, fitting, insideLengthMm, ballWidthMm })
}
/** Pairs of a visit whose inside length was measured and whose model stands on a shelf. */
export const pairsMeasured = (
	{ footwear = [], visitDate }: Pick<Visit, 'footwear' | 'visitDate'>,
	playerId: string,
): MeasuredPair[] => footwear.flatMap((pair) => measured(pair, playerId, visitDate) ?? [])

type SizeOf = Pick<MeasuredPair, 'system' | 'label' | 'fitting'>
const isOfSize = (size: ShelfSize, { system, label, fitting }: SizeOf): boolean =>
	size.system === system && size.label === label && (size.fitting ?? '') === (fitting ?? '')
function sizeOf(shelf: Shelf, pair: MeasuredPair): { model: Model; size: ShelfSize } | undefined {
	const model = shelf.models.find(({ id }) => id === pair.model)
	const size = model?.sizes.find((one) => isOfSize(one, pair))
	return model && size && { model, size }
}
const counted = ({ measured = [] }: ShelfSize): MeasuredOfSize[] =>
	measured.filter(({ counts }) => counts)
/** The middle one; of an even number the mean of the two in the middle. */
function median(values: readonly number[]): number | undefined {
	const sorted = values.toSorted((one, other) => one - other)
	const middle = (sorted.length - 1) / 2
	const [low, high] = [sorted[Math.floor(middle)], sorted[Math.ceil(middle)]]
	return low === undefined || high === undefined ? undefined : rounded((low + high) / 2, 1)
}
const widthsOf = (pairs: readonly MeasuredOfSize[]): number[] =>
	pairs.flatMap(({ ballWidthMm }) => ballWidthMm ?? [])
/** How far pairs of a size were from what was listed before any was measured. */
export interface Differing {
	/** How many were measured, and how many of them differed by a millimetre or more. */
	pairs: number
	differ: number
	/** The middle difference: below nought they are shorter inside. */
	medianMm: number
}
/** Over the sizes given; undefined where none was measured. */
export function differingIn({ sizes }: Pick<Model, 'sizes'>): Differing | undefined {
	const found = sizes.flatMap((size) => {
		const listed = size.listed?.insideLengthMm ?? size.insideLengthMm
		return counted(size).map(({ insideLengthMm }) => rounded(insideLengthMm - listed, 1))
	})
	const medianMm = median(found)
	if (medianMm === undefined) return undefined
	return { pairs: found.length, differ: found.filter((mm) => Math.abs(mm) >= 1).length, medianMm }
}
/** A measured pair that nobody has answered about yet, and what taking it over would do. */
export const toLearnSchema = z.strictObject({
	of: z.string().max(64),
	on: z.string().max(10),
	name: z.string().max(80),
	system: z.enum(sizeSystems),
	label: z.number(),
	fitting: z.string().max(20).optional(),
	measuredMm: z.number(),
	listedMm: z.number(),
	widthMm: z.number().optional(),
	listedWidthMm: z.number(),
	/** With this one: how many, the middle difference, and what the shelf would say. */
	pairs: z.number(),
	medianMm: z.number(),
	afterMm: z.number(),
})
export type ToLearn = z.infer<typeof toLearnSchema>
/** With another pair measured of it; one that was measured before stands as it is measured now. */
function withPair(size: ShelfSize, pair: MeasuredPair, counts: boolean): ShelfSize {
	const { of, on, insideLengthMm, ballWidthMm } = pair
	const others = (size.measured ?? []).filter((one) => one.of !== of)
	return {
		...size,
		listed: size.listed ?? {
			insideLengthMm: size.insideLengthMm,
			ballWidthMm: size.ballWidthMm,
		},
		measured: [...others, { of, on, insideLengthMm, ...present({ ballWidthMm }), counts }].slice(
			-mostMeasured,
		),
	}
}
/** As many as are kept of a size: the newest. */
const mostMeasured = 200
function askedOf(shelf: Shelf, pair: MeasuredPair): ToLearn | undefined {
	const found = sizeOf(shelf, pair)
	if (!found || found.size.measured?.some(({ of }) => of === pair.of)) return undefined
	const { model, size } = found
	const withIt = withPair(size, pair, true)
	const { pairs = 1, medianMm = 0 } = differingIn({ sizes: [withIt] }) ?? {}
	return {
		of: pair.of,
		on: pair.on,
		name: model.name,
		system: pair.system,
		label: pair.label,
		...present({ fitting: pair.fitting }),
		measuredMm: pair.insideLengthMm,
		listedMm: size.insideLengthMm,
		...present({ widthMm: pair.ballWidthMm }),
		listedWidthMm: size.ballWidthMm,
		pairs,
		medianMm,
		afterMm: takenOver(withIt).insideLengthMm,
	}
}
/** Each pair once, as it was measured last; none of a model or size that the shelf does not have. */
export function toLearn(shelf: Shelf, pairs: readonly MeasuredPair[]): ToLearn[] {
	const latest = new Map(
		pairs.toSorted((one, other) => (one.on < other.on ? -1 : 1)).map((pair) => [pair.of, pair]),
	)
	return [...latest.values()].flatMap((pair) => askedOf(shelf, pair) ?? [])
}
/** What was measured stands in place of what was listed. */
function takenOver(size: ShelfSize): ShelfSize {
	const pairs = counted(size)
	const lengthMm = median(pairs.map(({ insideLengthMm }) => insideLengthMm))
	const widthMm = median(widthsOf(pairs))
	return {
		...size,
		...(lengthMm !== undefined && { insideLengthMm: lengthMm }),
		...(widthMm !== undefined && { ballWidthMm: widthMm }),
	}
}
/** The shelf as a person answered about a measured pair; undefined where it has no such size. */
export function learned(shelf: Shelf, pair: MeasuredPair, answer: Learning): Shelf | undefined {
	const found = sizeOf(shelf, pair)
	if (!found) return undefined
	const kept = withPair(found.size, pair, answer !== 'leave-out')
	const size = answer === 'take-over' ? takenOver(kept) : kept
	return {
		...shelf,
		models: shelf.models.map((model) =>
			model === found.model
				? { ...model, sizes: model.sizes.map((one) => (one === found.size ? size : one)) }
				: model,
		),
	}
}
/** What a shelf has learned stays with its sizes, however their other entries are changed. */
export function withLearned(next: Shelf, before: Shelf | undefined): Shelf {
	const known = new Map(before?.models.map((model) => [model.id, model]))
	return {
		...next,
		models: next.models.map((model) => ({
			...model,
			sizes: model.sizes.map((size) => {
				const was = known.get(model.id)?.sizes.find((one) => isOfSize(one, size))
				const { measured: _measured, listed: _listed, ...own } = size
				return { ...own, ...present({ listed: was?.listed, measured: was?.measured }) }
			}),
		})),
	}
}
