/** Adds to the footwear room what the shelf, the modifications and the lacing say. */
import { isHeld, openGate } from '../facts/held.ts'
import { jointNames } from '../facts/joint-risks.table.ts'
import type { FootwearResult, RankedModel, StudDistance } from '../findings/assessment.ts'
import { type Finding, reading } from '../findings/finding.ts'
import { need } from '../plain/need.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { Part } from '../words/en/parts.ts'
import { onceEach, state } from '../words/statement.ts'
import type { FootwearContext } from './facts.ts'
import { footwearFinding } from './finding.ts'
import type { InsertVolume } from './insert-volume.ts'
import { lacingRows } from './lacing.ts'
import { modificationRows } from './modifications.ts'
import { proposedCount, rankedFor } from './shelf-for.ts'
import { allRemovable, jointRisks, jointsOf } from './studs.ts'
import { workFacts, workOf } from './work.ts'

/** How many different reasons are told where none passes. */
const toldStops = 3
const order: Basis = {
	rule: 'order of the shelf',
	source: 'sum of weighted penalties; every weight is an own choice in the protocol',
	strength: 'practice',
}
/**
 * @param shelf absent: nothing is ranked; @param insert what the insert prescribed takes, if one is
 * to be worn
 */
export function withShelf(
	result: FootwearResult,
	visit: Visit,
	context: FootwearContext,
	shelf: Shelf | undefined,
	protocol: Protocol,
	insert?: InsertVolume,
): FootwearResult {
	const gate = context.gate ?? openGate
	if (!shelf || isHeld(gate, 'shelf') || isHeld(gate, 'purchase')) return result
	const ranked = rankedFor(result.target, shelf, visit, context, protocol, insert)
	const findings =
		ranked.length === 0
			? [unmatched(context)]
			: [
					...firstOnShelf(ranked),
					...studsUnderJoints(ranked, shelf, protocol),
					...studsUnplaced(visit, context, protocol),
				]
	return { ...result, findings: [...result.findings, ...findings], ranked }
}
/** With the changes to a shoe and the ways to lace it that are called for, and not held. */
export function withWork(
	result: FootwearResult,
	visit: Visit,
	context: FootwearContext,
	protocol: Protocol,
): FootwearResult {
	const facts = workFacts(visit, context, result.target, protocol)
	return {
		...result,
		modifications: workOf(modificationRows, facts),
		lacing: workOf(lacingRows, facts),
	}
}
const unmatched = ({ sizing }: FootwearContext): Finding => {
	const lacks = sizing.fitLengthMm === undefined ? 'foot-length' : 'models'
	return footwearFinding(
		'shelf-unmatched',
		'note',
		state('footwear.shelf-unmatched', { lacks }),
		[],
		order,
	)
}
const suitable = (ranked: readonly RankedModel[]): RankedModel[] =>
	ranked.filter((model) => model.verdict !== 'unsuitable')
/** Reasons of different rules, the first of each model, at most as many as are told. */
function firstStops(ranked: readonly RankedModel[]): Part[] {
	const stops = ranked.flatMap(({ stops }) => stops.slice(0, 1))
	const parts = stops.map(({ code = '', params = {} }) => ({ code, params }))
	return onceEach(parts).slice(0, toldStops)
}
const toeRoomNames = ['toeRoomInFirstMm', 'toeRoomInSecondMm', 'toeRoomInThirdMm'] as const
/** The models put forward; where none passes, the first three different reasons why. */
function firstOnShelf(ranked: readonly RankedModel[]): Finding[] {
	const first = suitable(ranked).slice(0, proposedCount)
	if (first.length === 0) {
		const none = state('footwear.shelf-none', {
			models: ranked.length,
			stops: firstStops(ranked),
		})
		return [footwearFinding('shelf-none', 'caution', none, [], order)]
	}
	const models = first.map(({ name, size, verdict }) => ({
		name,
		size: present({ label: size.label, system: size.system, fitting: size.fitting }),
		withChanges: verdict === 'with-changes',
	}))
	const because = first.flatMap(({ toeRoomMm }, place) => {
		const measure = toeRoomNames[place]
		return measure === undefined ? [] : [reading(measure, toeRoomMm, 'mm')]
	})
	return [footwearFinding('shelf', 'advise', state('footwear.shelf', { models }), because, order)]
}
/** A stud that stands under a joint at risk in a model put forward. */
interface StudFound {
	first: RankedModel
	side: Side
	joint: StudDistance
	removable: boolean
}
/** In the models put forward, studs that stand under a joint at risk. */
function studsUnderJoints(
	ranked: readonly RankedModel[],
	shelf: Shelf,
	protocol: Protocol,
): Finding[] {
	const onSide = (first: RankedModel, side: Side): StudFound[] => {
		const model = shelf.models.find(({ id }) => id === first.id)
		return (first.studs?.[side] ?? [])
			.filter(({ under, atRisk }) => under.length > 0 && atRisk.length > 0)
			.map((joint) => ({
				first,
				side,
				joint,
				removable: allRemovable(need(model, 'the ranked model on its shelf'), joint.under),
			}))
	}
	const found = suitable(ranked)
		.slice(0, proposedCount)
		.flatMap((first) => bothSides.flatMap((side) => onSide(first, side)))
	return found.map((one, at) => {
		// what can be done is told once: it is the same for each of them
		const isTold = found.slice(0, at).some(({ removable }) => removable === one.removable)
		return studFinding(one, isTold, protocol)
	})
}
function studFinding(
	{ first, side, joint: at, removable }: StudFound,
	isTold: boolean,
	protocol: Protocol,
): Finding {
	const { joint, nearestMm, atRisk } = at
	const params = { model: first.name, side, joint, nearestMm, removable }
	return footwearFinding(
		`stud-${first.id}-${side}-${joint.replaceAll(' ', '-')}`,
		'caution',
		state('footwear.stud', isTold ? { ...params, isTold } : params),
		[...atRisk, reading('nearestStudMm', nearestMm, 'mm', side)],
		protocol.basis('stud under a joint', 'footwear.underJointMm'),
		side,
	)
}
/** Feet with a joint at risk that studs could not be checked against. */
function studsUnplaced(visit: Visit, context: FootwearContext, protocol: Protocol): Finding[] {
	const [side, otherSide] = bothSides.filter((side) => {
		const risks = jointRisks(visit, context.posture, side, context.facts)
		return (
			jointNames.some((joint) => risks[joint].length > 0) &&
			jointsOf(context.sizing, side, protocol) === undefined
		)
	})
	if (side === undefined) return []
	const unplaced = otherSide ? 'both' : side
	return [
		footwearFinding(
			'stud-unplaced',
			'caution',
			state('footwear.stud-unplaced', { side: unplaced }),
			[],
			protocol.basis('stud under a joint', 'footwear.underJointMm'),
			unplaced,
		),
	]
}

/** What a boot holds of an insert; all mm. */
interface RoomInBoot {
	removableLiner?: boolean
	linerMm?: number
	depthOverToesMm?: number
}
/**
 * The room for an insert in the first model that passes, or undefined: liner and free depth over
 * the toes, mm, with the liner out where it comes out.
 */
export function roomInFirst(
	result: FootwearResult,
	shelf: Shelf | undefined,
	insert: InsertVolume | undefined,
): RoomInBoot | undefined {
	const [first] = suitable(result.ranked)
	const model = shelf?.models.find(({ id }) => id === first?.id)
	if (!first || !model) return undefined
	const { depthMarginMm } = first
	return present({
		removableLiner: model.removableLiner,
		linerMm: model.linerThicknessMm,
		depthOverToesMm:
			depthMarginMm === undefined
				? undefined
				: Math.max(0, depthMarginMm + (insert?.forefootMm ?? 0)),
	})
}
