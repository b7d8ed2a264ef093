/** Adds to the footwear room what the shelf, the modifications and the lacing say. */
import { isAdult } from '../facts/age.ts'
import type { FootwearResult, RankedModel } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { need } from '../plain/need.ts'
import { present } from '../plain/present.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf } from '../visit/shelf.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { FootwearContext } from './facts.ts'
import type { InsertVolume } from './insert-volume.ts'
import { lacingRows } from './lacing.ts'
import { matchShelf } from './match/match.ts'
import { modificationRows } from './modifications.ts'
import { jointNames, jointRisks, jointsOf, studWork } from './studs.ts'
import { workFacts, workOf } from './work.ts'

/** How many models are put forward. */
const proposedCount = 3
const mm = (measure: string, value: number): Because => ({ measure, value, unit: 'mm' })
const finding = (
	id: string,
	level: Finding['level'],
	says: string,
	because: Because[],
	basis: Basis,
	side: Finding['side'] = 'none',
): Finding => ({ id: `footwear.${id}`, topic: 'footwear', side, level, says, because, basis })
const order: Basis = {
	rule: 'order of the shelf',
	source: 'sum of weighted penalties; every weight is an own choice in the protocol',
	strength: 'practice',
}
const systemWords: Readonly<Record<string, string>> = {
	mondopoint: 'mm',
	jpCm: 'cm (Japan)',
	eu: 'EU',
	uk: 'UK',
	usMen: 'US men',
	usWomen: 'US women',
	usChild: 'US child',
	au: 'Australia',
}
/** '8.5 UK, fitting G'; the label as the box shows it. */
export function sizeWords({ label, system, fitting }: RankedModel['size']): string {
	const size = `${label} ${systemWords[system] ?? system}`
	return fitting === undefined ? size : `${size}, fitting ${fitting}`
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
	const facts = workFacts(visit, context.ankle, context.posture, result.target, protocol)
	const worked = {
		...result,
		modifications: workOf(modificationRows, facts),
		lacing: workOf(lacingRows, facts),
	}
	if (!shelf) return worked
	const ranked = rankedFor(result, visit, context, shelf, protocol, insert)
	const findings =
		ranked.length === 0
			? [unmatched(context)]
			: [
					...firstOnShelf(ranked),
					...studsUnderJoints(ranked, shelf, protocol),
					...studsUnplaced(visit, context, protocol),
				]
	return { ...worked, findings: [...result.findings, ...findings], ranked }
}
function rankedFor(
	result: FootwearResult,
	visit: Visit,
	context: FootwearContext,
	shelf: Shelf,
	protocol: Protocol,
	insert: InsertVolume | undefined,
): RankedModel[] {
	const adult = isAdult(visit, protocol)
	const stopping = result.findings.filter((found) => found.level === 'stop')
	const { target, contradictions } = result
	const strictRules = new Set(stopping.map((found) => found.basis.rule))
	return matchShelf(
		shelf,
		visit,
		{ ...context, target, contradictions, adult, strictRules, insert },
		protocol,
	)
}
const unmatched = ({ sizing }: FootwearContext): Finding =>
	finding(
		'shelf-unmatched',
		'note',
		sizing.fitLengthMm === undefined
			? 'The shelf is not matched: measure the length of both feet.'
			: 'The shelf holds no model on sale.',
		[],
		order,
	)
const suitable = (ranked: readonly RankedModel[]): RankedModel[] =>
	ranked.filter((model) => model.verdict !== 'unsuitable')
/** The models put forward; where none passes, the first three different reasons why. */
function firstOnShelf(ranked: readonly RankedModel[]): Finding[] {
	const first = suitable(ranked).slice(0, proposedCount)
	if (first.length === 0) {
		const why = new Set(ranked.flatMap(({ stops }) => stops.slice(0, 1).map((stop) => stop.says)))
		return [
			finding(
				'shelf-none',
				'caution',
				`None of the ${ranked.length} models on the shelf passes: ` +
					`${[...why].slice(0, 3).join(' ')}`,
				[],
				order,
			),
		]
	}
	const named = first.map(
		({ name, size, verdict }) =>
			`${name}, ${sizeWords(size)}${verdict === 'with-changes' ? ' (with changes)' : ''}`,
	)
	return [
		finding(
			'shelf',
			'advise',
			`First on the shelf for this player: ${named.join('; ')}. Try them on with the socks, and ` +
				'the insert if one is worn.',
			first.map(({ name, toeRoomMm }) => mm(`Toe room in ${name}`, toeRoomMm)),
			order,
		),
	]
}
/** In the models put forward, studs that stand under a joint at risk. */
function studsUnderJoints(
	ranked: readonly RankedModel[],
	shelf: Shelf,
	protocol: Protocol,
): Finding[] {
	const basis = protocol.basis('stud under a joint', 'footwear.underJointMm')
	const onSide = (first: RankedModel, side: Side): Finding[] => {
		const model = shelf.models.find(({ id }) => id === first.id)
		return (first.studs?.[side] ?? [])
			.filter(({ under, atRisk }) => under.length > 0 && atRisk.length > 0)
			.map(({ joint, nearestMm, under, atRisk }) => {
				const work = studWork(need(model, 'the ranked model on its shelf'), under)
				return finding(
					`stud-${first.id}-${side}-${joint.replaceAll(' ', '-')}`,
					'caution',
					`In ${first.name} a stud stands under the ${side} ${joint} (${nearestMm} mm ` +
						`from it): ${work.says}. ${work.limits}`,
					[...atRisk, mm('Stud to joint', nearestMm)],
					basis,
					side,
				)
			})
	}
	return suitable(ranked)
		.slice(0, proposedCount)
		.flatMap((first) => bothSides.flatMap((side) => onSide(first, side)))
}
/** Feet with a joint at risk that studs could not be checked against. */
function studsUnplaced(visit: Visit, context: FootwearContext, protocol: Protocol): Finding[] {
	const [side, otherSide] = bothSides.filter((side) => {
		const risks = jointRisks(visit, context.posture, side)
		return (
			jointNames.some((joint) => risks[joint].length > 0) &&
			jointsOf(context.sizing, side, protocol) === undefined
		)
	})
	if (side === undefined) return []
	return [
		finding(
			'stud-unplaced',
			'caution',
			`Studs are not checked against the ${otherSide ? `${side} and ${otherSide}` : side} foot, ` +
				'which has a joint at risk: measure its length, heel to ball and ball width.',
			[],
			protocol.basis('stud under a joint', 'footwear.underJointMm'),
			otherSide ? 'both' : side,
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
