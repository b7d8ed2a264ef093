/** A solved rotation written as the Plan file, with its reasons, forecasts and findings. */
import type { Assessment } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Suitability } from '../protocol/norms/suitability.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import type { Built } from './build.ts'
import { purchasesOf, toeRoomOf, wearOf } from './forecast.ts'
import { fullDay } from './pattern.ts'
import type { Plan, PlanPair } from './plan-file.ts'
import { endHour, type Rotation, type SeasonProblem, trainingAhead } from './problem.ts'
import { reasonsOf, type Unmet, type UnmetKind, unmetOf } from './reasons.ts'
import { verify } from './verify.ts'

export interface PlanInput {
	visit: Visit
	assessment: Pick<Assessment, 'growth' | 'screening' | 'footwear'>
	protocol: Protocol
	suitability: Suitability
	built: Built
	rotation: Rotation
	status: Plan['status']
	gap: number
	from: string
}
const finding = (
	id: string,
	level: Finding['level'],
	says: string,
	because: Because[],
	basis: Finding['basis'],
): Finding => ({ id, topic: 'season', side: 'none', level, says, because, basis })
const momentOf = (slot: SeasonProblem['slots'][number]): string =>
	`${fullDay(slot.date)}, ${slot.start}`
const kinds: Record<
	UnmetKind,
	{ level: Finding['level']; key: ThresholdKey; says: (count: number) => string }
> = {
	'no-pair': {
		level: 'caution',
		key: 'season.noPairPoints',
		says: (n) =>
			`In ${n} ${n === 1 ? 'session' : 'sessions'} no pair may be worn. See what to buy, or ` +
			'change the session.',
	},
	'not-dry': {
		level: 'advise',
		key: 'season.dryingDampHours',
		says: (n) => `In ${n} ${n === 1 ? 'session' : 'sessions'} the boots may not be dry yet.`,
	},
	unfamiliar: {
		level: 'note',
		key: 'season.familiarDays',
		says: (n) =>
			`${n} ${n === 1 ? 'match is' : 'matches are'} played in a pair not worn in training ` +
			'shortly before.',
	},
	pin: {
		level: 'caution',
		key: 'season.pinPoints',
		says: (n) =>
			`${n} pinned ${n === 1 ? 'session' : 'sessions'} could not be given the pinned pair.`,
	},
}
function unmetFindings(
	problem: SeasonProblem,
	unmet: readonly Unmet[],
	protocol: Protocol,
): Finding[] {
	return (Object.keys(kinds) as UnmetKind[]).flatMap((kind) => {
		const list = unmet.filter((one) => one.kind === kind)
		const { level, key, says } = kinds[kind]
		return list.length === 0
			? []
			: [
					finding(
						`season.${kind}`,
						level,
						says(list.length),
						list.map((one) => ({ measure: momentOf(problem.slots[one.slot]!), value: one.says })),
						protocol.basis(`season.${kind}`, key),
					),
				]
	})
}
function shareFindings(
	problem: SeasonProblem,
	share: readonly { pair: number; minutes: number }[],
	protocol: Protocol,
): Finding[] {
	return share.map(({ pair: p, minutes }) => {
		const pair = problem.pairs[p]!
		const over = minutes > 0
		const [bound, ahead] = [(over ? pair.shareMax : pair.shareMin)!, trainingAhead(problem)]
		const percent = rounded((100 * (bound * ahead + minutes)) / ahead, 0)
		return finding(
			`season.share-${pair.id}`,
			'note',
			`Pair ${pair.letter} (${pair.name}) is worn in ${percent} % of the training time; ` +
				`${over ? 'at most' : 'at least'} ${rounded(100 * bound, 0)} % was asked for. Other rules ` +
				'and wishes of the plan weigh more.',
			[
				{
					measure: over ? 'minutes above the share' : 'minutes below the share',
					value: rounded(Math.abs(minutes), 0),
					unit: 'min',
				},
			],
			protocol.basis('season.share', 'season.shareBoundPoints'),
		)
	})
}
function pairFindings(pair: PlanPair, protocol: Protocol): Finding[] {
	const found: Finding[] = []
	if (pair.replaceBy !== undefined && pair.replaceBy !== pair.outgrownBy)
		found.push(
			finding(
				`season.worn-out-${pair.id}`,
				'advise',
				`Pair ${pair.letter} (${pair.name}) reaches the end of its expected life by ` +
					`${fullDay(pair.replaceBy)}.`,
				[
					{
						measure: 'minutes at the end of the plan',
						value: rounded(pair.minutes, 0),
						unit: 'min',
					},
				],
				protocol.basis('wear to the end of life', 'season.lifeMinutes'),
			),
		)
	else if (pair.checkBy !== undefined)
		found.push(
			finding(
				`season.wear-check-${pair.id}`,
				'note',
				`Check studs, counter and sole of pair ${pair.letter} (${pair.name}) by ` +
					`${fullDay(pair.checkBy)}.`,
				[
					{
						measure: 'minutes at the end of the plan',
						value: rounded(pair.minutes, 0),
						unit: 'min',
					},
				],
				protocol.basis('wear to the window of replacement', 'season.checkShare'),
			),
		)
	if (pair.outgrownBy !== undefined)
		found.push(
			finding(
				`season.outgrown-${pair.id}`,
				'advise',
				`At the usual rate of growth pair ${pair.letter} (${pair.name}) is too short by ` +
					`${fullDay(pair.outgrownBy)}; measure the feet again by ` +
					`${fullDay(pair.measureAgainBy ?? pair.outgrownBy)}.`,
				[
					{
						measure: 'toe room forecast',
						value: pair.toeRoom?.find((one) => one.date === pair.outgrownBy)?.toeRoomMm ?? '',
						unit: 'mm',
					},
				],
				protocol.basis('toe room against the forecast of foot growth', 'footwear.youthReplaceMm'),
			),
		)
	return found
}
function calendarFindings(problem: SeasonProblem, visit: Visit, protocol: Protocol): Finding[] {
	const own = (rule: string) => ({
		rule,
		source: 'common practice, no source',
		strength: 'practice' as const,
	})
	const open = problem.slots.filter((slot) => !slot.past)
	const overlap = open
		.slice(1)
		.flatMap((slot, i): Because[] =>
			endHour(open[i]!) > slot.startHour
				? [{ measure: momentOf(slot), value: 'begins before the session before it has ended' }]
				: [],
		)
	const matches = open.filter((slot) => slot.kind === 'match')
	const close = matches.slice(1).flatMap((slot, i): Because[] => {
		const hours = slot.startHour - endHour(matches[i]!)
		return hours >= 0 && hours < 24
			? [{ measure: momentOf(slot), value: rounded(hours, 0), unit: 'h after the match before' }]
			: []
	})
	const found: Finding[] = []
	if (overlap.length > 0)
		found.push(
			finding(
				'season.overlap',
				'caution',
				`${overlap.length} ${overlap.length === 1 ? 'session overlaps' : 'sessions overlap'} ` +
					'another. Cancel one of the two.',
				overlap,
				own('sessions must not overlap'),
			),
		)
	if (close.length > 0)
		found.push(
			finding(
				'season.matches-close',
				'note',
				`${close.length} ${close.length === 1 ? 'match follows' : 'matches follow'} another ` +
					'within 24 hours.',
				close,
				own('matches within 24 hours are pointed out'),
			),
		)
	const history = visit.conditions?.find(
		(condition) => condition.condition === 'fifth-metatarsal-stress-fracture',
	)
	const total = open.reduce((sum, slot) => sum + slot.minutes, 0)
	const turf = open
		.filter((slot) => slot.surface.startsWith('artificial'))
		.reduce((sum, slot) => sum + slot.minutes, 0)
	if (history && total > 0 && turf / total > protocol.value('season.turfShare'))
		found.push({
			...finding(
				'season.turf-share',
				'caution',
				`${rounded((100 * turf) / total, 0)} % of the season's time is on artificial turf. ` +
					'Playing mostly on it is associated with fifth metatarsal stress fracture; no choice of ' +
					'boots changes this share.',
				[
					{
						measure: 'time on artificial turf',
						value: rounded((100 * turf) / total, 0),
						unit: '%',
					},
				],
				protocol.basis('season.turf-share', 'season.turfShare'),
			),
			side: history.side,
		})
	return found
}
function breakInFindings(problem: SeasonProblem, protocol: Protocol): Finding[] {
	return problem.pairs.flatMap((pair, p) => {
		if (!pair.isNew) return []
		const steps = problem.fixed.filter((fixed) => fixed.pair === p && fixed.why === 'break-in')
		const free = problem.slots.some(
			(slot, s) =>
				!slot.past &&
				typeof problem.cost[s]![p] === 'number' &&
				!steps.some((step) => step.slot === s),
		)
		if (steps.length === 0 && free) return []
		if (!free)
			return [
				finding(
					`season.break-in-${pair.id}`,
					'caution',
					`Pair ${pair.letter} (${pair.name}) is not broken in before the season ends: too few ` +
						'trainings suit it.',
					steps.map((step) => ({
						measure: fullDay(problem.slots[step.slot]!.date),
						value: rounded(step.minutes, 0),
						unit: 'min',
					})),
					protocol.basis('break-in ladder', 'season.breakInFirstMinutes'),
				),
			]
		const last = problem.slots[steps.at(-1)!.slot]!
		const usual = protocol.value('season.breakInFirstMinutes')
		const shorter =
			problem.breakIn.firstMinutes < usual
				? ` Steps are ${rounded((100 * problem.breakIn.firstMinutes) / usual, 0)} % of the ` +
					'usual ones, as an insert is new too.'
				: ''
		return [
			finding(
				`season.break-in-${pair.id}`,
				'note',
				`Break in pair ${pair.letter} (${pair.name}): twice at home for ` +
					`${rounded(problem.breakIn.firstMinutes, 0)} minutes, then in ${steps.length} trainings ` +
					`until ${fullDay(last.date)}, and only then in a match, with no hot spot left. With a ` +
					`blister or bone pain go back one step.${shorter}`,
				steps.map((step) => ({
					measure: fullDay(problem.slots[step.slot]!.date),
					value: rounded(step.minutes, 0),
					unit: 'min',
				})),
				protocol.basis('break-in ladder', 'season.breakInFirstMinutes'),
			),
		]
	})
}
/**
 * The Plan file of a solved season.
 * @throws Error naming the session where the rotation breaks a hard rule: such a plan is never
 * written
 */
export function composePlan(input: PlanInput): Plan {
	const { visit, assessment, protocol, suitability, built, rotation, from } = input
	const { problem } = built
	const checked = verify(problem, rotation)
	if (checked.problems.length > 0)
		throw new Error(
			`The plan breaks a rule and was not kept: ${checked.problems.slice(0, 3).join('; ')}`,
		)
	const unmet = unmetOf(problem, rotation, checked)
	const season = { from: visit.season?.from ?? from, to: visit.season?.to ?? from }
	const recorded = new Map((visit.footwear ?? []).map((pair) => [pair.id, pair]))
	const pairs = problem.pairs.map((pair, p): PlanPair => {
		const { minutes, wear, checkBy, wornOutBy } = wearOf(problem, rotation, p, season, protocol)
		const toe = toeRoomOf(recorded.get(pair.id)!, visit, assessment.growth, protocol)
		const outgrownNow = assessment.footwear.current.some(
			(one) =>
				one.id === pair.id &&
				one.verdict === 'replace' &&
				(one.toeRoomMm ?? 99) < protocol.value('footwear.youthReplaceMm'),
		)
		const outgrownBy = outgrownNow ? visit.visitDate : toe.outgrownBy
		const replaceBy = [wornOutBy, outgrownBy]
			.filter((one): one is string => one !== undefined && one <= season.to)
			.sort()[0]
		const last = problem.fixed
			.filter((fixed) => fixed.pair === p && fixed.why === 'break-in')
			.at(-1)
		return {
			id: pair.id,
			letter: pair.letter,
			name: pair.name,
			sole: pair.sole,
			minutes: rounded(minutes, 1),
			wearFraction: rounded(minutes / pair.lifeMinutes, 4),
			...(checkBy === undefined ? {} : { checkBy }),
			...(replaceBy === undefined ? {} : { replaceBy }),
			...(last === undefined ? {} : { brokenInBy: problem.slots[last.slot]!.date }),
			wear,
			...toe,
			...(outgrownBy === undefined ? {} : { outgrownBy }),
		}
	})
	const sessions = problem.slots.map((slot, s): Plan['sessions'][number] => {
		const uses = rotation.uses[s]!
		// compared as written, so that two equal parts name the same pair when the plan is read back
		const main = [...uses].sort((a, b) => rounded(b.minutes, 1) - rounded(a.minutes, 1))[0]
		return {
			id: slot.id,
			date: slot.date,
			start: slot.start,
			minutes: slot.minutes,
			...(slot.fullMinutes === undefined ? {} : { fullMinutes: slot.fullMinutes }),
			kind: slot.kind,
			surface: slot.surface,
			ground: slot.ground,
			...(slot.team === undefined ? {} : { team: slot.team }),
			...(slot.title === undefined ? {} : { title: slot.title }),
			...(slot.past ? { past: true } : {}),
			...(main === undefined ? {} : { pair: problem.pairs[main.pair]!.id }),
			...(uses.length > 1 || (main && main.minutes < slot.minutes - 0.01)
				? {
						parts: uses.map((use) => ({
							pair: problem.pairs[use.pair]!.id,
							minutes: rounded(use.minutes, 1),
						})),
					}
				: {}),
			reasons:
				main === undefined && !slot.past ? [] : reasonsOf(problem, rotation, checked.minutes, s),
			unmet: unmet.filter((one) => one.slot === s).map((one) => one.says),
		}
	})
	const purchases = purchasesOf(problem, suitability, pairs, checked.noPair, from)
	const findings = [
		...built.findings,
		...(assessment.screening.action === 'proceed' || assessment.screening.action === 'letter'
			? []
			: [
					finding(
						'season.screening-first',
						'stop',
						'The warning signs of this visit come first: the plan holds only once what was done ' +
							'about them is recorded.',
						[{ measure: 'screening', value: assessment.screening.action }],
						{
							rule: 'screening before planning',
							source: 'own rule of this program',
							strength: 'practice',
						},
					),
				]),
		...(input.status === 'time-limit'
			? [
					finding(
						'season.time-limit',
						'note',
						'The time limit was reached: this is the best plan found, within ' +
							`${rounded(100 * input.gap, 2)} % of the best possible.`,
						[{ measure: 'gap', value: rounded(100 * input.gap, 2), unit: '%' }],
						{
							rule: 'time limit of the solver',
							source: 'own rule of this program',
							strength: 'practice',
						},
					),
				]
			: []),
		...(problem.slots.every((slot) => slot.past)
			? [
					finding(
						'season.no-sessions',
						'note',
						'No session lies ahead: nothing was planned.',
						[{ measure: 'sessions', value: problem.slots.length }],
						{
							rule: 'a plan needs sessions',
							source: 'own rule of this program',
							strength: 'practice',
						},
					),
				]
			: []),
		...unmetFindings(problem, unmet, protocol),
		...shareFindings(problem, checked.share, protocol),
		...calendarFindings(problem, visit, protocol),
		...breakInFindings(problem, protocol),
		...pairs.flatMap((pair) => pairFindings(pair, protocol)),
		...purchases.map((purchase, i) =>
			finding(
				`season.buy-${i + 1}`,
				'advise',
				purchase.says,
				[{ measure: 'needed by', value: fullDay(purchase.neededBy) }],
				protocol.basis('a new pair is broken in before it is needed', 'season.matchFromMinutes'),
			),
		),
	]
	return {
		format: 'lastwright-plan',
		version: 1,
		status: input.status,
		gap: rounded(input.gap, 6),
		from,
		season,
		sessions,
		off: built.off.map((one) => ({
			id: one.id,
			date: one.date,
			...(one.start === undefined ? {} : { start: one.start }),
			kind: one.kind,
			status: one.status!,
			...(one.team === undefined ? {} : { team: one.team }),
			...(one.title === undefined ? {} : { title: one.title }),
		})),
		pairs,
		purchases,
		findings,
	}
}
