/** Adds to the footwear room what the shelf, the modifications and the lacing say. */
import type { FootwearResult, RankedModel } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Shelf } from '../visit/shelf.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import type { FootwearContext } from './facts.ts'
import { lacingRows } from './lacing.ts'
import { type InsertVolume, matchShelf } from './match.ts'
import { modificationRows, workFacts, workOf } from './modifications.ts'
import { jointNames, jointRisks, jointsOf, studWork } from './studs.ts'

const proposed = 3
const mm = (measure: string, value: number) => ({ measure, value, unit: 'mm' })
/** '8.5 UK, fitting G'; the label as the box shows it. */
export function sizeWords(size: RankedModel['size']): string {
	const system =
		{
			mondopoint: 'mm',
			jpCm: 'cm (Japan)',
			eu: 'EU',
			uk: 'UK',
			usMen: 'US men',
			usWomen: 'US women',
			usChild: 'US child',
			au: 'Australia',
		}[size.system] ?? size.system
	return `${size.label} ${system}${size.fitting === undefined ? '' : `, fitting ${size.fitting}`}`
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
	const findings: Finding[] = [...result.findings]
	const worked = {
		...result,
		modifications: workOf(modificationRows, facts),
		lacing: workOf(lacingRows, facts),
		findings,
	}
	if (!shelf) return worked
	const say = (
		id: string,
		level: Finding['level'],
		says: string,
		because: Finding['because'],
		basis: Finding['basis'],
		side: Finding['side'] = 'none',
	) => findings.push({ id: `footwear.${id}`, topic: 'footwear', side, level, says, because, basis })
	const adult =
		ageYears(visit.player.birthDate, visit.visitDate) >= protocol.value('footwear.adultFromYears')
	const strictRules = new Set(
		result.findings
			.filter((finding) => finding.level === 'stop')
			.map((finding) => finding.basis.rule),
	)
	const ranked = matchShelf(
		shelf,
		visit,
		{
			...context,
			target: result.target,
			contradictions: result.contradictions,
			adult,
			strictRules,
			insert,
		},
		protocol,
	)
	const order = {
		rule: 'order of the shelf',
		source: 'sum of weighted penalties; every weight is an own choice in the protocol',
		strength: 'practice' as const,
	}
	if (ranked.length === 0) {
		const unmeasured = context.sizing.fitLengthMm === undefined
		say(
			'shelf-unmatched',
			'note',
			unmeasured
				? 'The shelf is not matched: measure the length of both feet.'
				: 'The shelf holds no model on sale.',
			[],
			order,
		)
		return worked
	}
	const open = ranked.filter((one) => one.verdict !== 'unsuitable')
	if (open.length === 0)
		say(
			'shelf-none',
			'caution',
			`None of the ${ranked.length} models on the shelf passes: ` +
				`${[...new Set(ranked.flatMap((one) => one.stops.slice(0, 1).map((stop) => stop.says)))].slice(0, 3).join(' ')}`,
			[],
			order,
		)
	else
		say(
			'shelf',
			'advise',
			`First on the shelf for this player: ${open
				.slice(0, proposed)
				.map(
					(one) =>
						`${one.name}, ` +
						`${sizeWords(one.size)}${one.verdict === 'with-changes' ? ' (with changes)' : ''}`,
				)
				.join('; ')}. Try them on with the socks, and the insert if one is worn.`,
			open.slice(0, proposed).map((one) => mm(`Toe room in ${one.name}`, one.toeRoomMm)),
			order,
		)
	for (const one of open.slice(0, proposed))
		for (const side of bothSides)
			for (const joint of one.studs?.[side] ?? []) {
				if (joint.under.length === 0 || joint.atRisk.length === 0) continue
				const model = shelf.models.find((each) => each.id === one.id)!
				const work = studWork(model, joint.under)
				say(
					`stud-${one.id}-${side}-${joint.joint.replaceAll(' ', '-')}`,
					'caution',
					`In ${one.name} a stud stands under the ${side} ${joint.joint} (${joint.nearestMm} mm ` +
						`from it): ${work.says}. ${work.limits}`,
					[...joint.atRisk, mm('Stud to joint', joint.nearestMm)],
					protocol.basis('stud under a joint', 'footwear.underJointMm'),
					side,
				)
			}
	const unplaced = bothSides.filter(
		(side) =>
			jointNames.some((joint) => jointRisks(visit, context.posture, side)[joint].length > 0) &&
			jointsOf(context.sizing, side, protocol) === undefined,
	)
	if (unplaced.length > 0)
		say(
			'stud-unplaced',
			'caution',
			`Studs are not checked against the ${unplaced.join(' and ')} foot, which has a joint at ` +
				'risk: measure its length, heel to ball and ball width.',
			[],
			protocol.basis('stud under a joint', 'footwear.underJointMm'),
			unplaced.length === 2 ? 'both' : unplaced[0]!,
		)
	return { ...worked, ranked }
}

/**
 * The room for an insert in the first model that passes, or undefined: liner and free depth over
 * the toes, mm, with the liner out where it comes out.
 */
export function roomInFirst(
	result: FootwearResult,
	shelf: Shelf | undefined,
	insert: InsertVolume | undefined,
): { removableLiner?: boolean; linerMm?: number; depthOverToesMm?: number } | undefined {
	const first = result.ranked.find((ranked) => ranked.verdict !== 'unsuitable')
	const model = shelf?.models.find((one) => one.id === first?.id)
	if (!first || !model) return undefined
	return {
		...(model.removableLiner === undefined ? {} : { removableLiner: model.removableLiner }),
		...(model.linerThicknessMm === undefined ? {} : { linerMm: model.linerThicknessMm }),
		...(first.depthMarginMm === undefined
			? {}
			: { depthOverToesMm: Math.max(0, first.depthMarginMm + (insert?.forefootMm ?? 0)) }),
	}
}
