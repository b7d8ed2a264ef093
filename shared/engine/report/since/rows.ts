/** What was told of the time since the visit before, a line each. It describes, and judges nothing. */
import { conditionRow } from '../../conditions/registry.ts'
import { troublesIn } from '../../recheck/told.ts'
import type { Pair, Since, Visit } from '../../visit/visit.ts'
import { count, listed } from '../../words/en/format.ts'
import { pairFor } from '../../words/en/question-names.ts'
import { toDoName, troubleName, wornNames } from '../../words/en/recheck.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, conditionInWords, shown, sideWords } from '../../words/words.ts'
import type { BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'

type Row = BlockOf<'facts'>['rows'][number]
/** What a row is about, where a competent minor may ask that it is not shown. */
type SinceTopic = 'footwear' | 'insert'
export interface SinceRow extends Row {
	topic?: SinceTopic
}
/** For whom the names of conditions are. */
type For = 'clinician' | 'player'
type Rows = (input: ReportInput & { since: Since }, t: Speak, to: For) => SinceRow[]

/** What was told, the parts in a row; what was not asked is no part. */
const told = (...parts: (string | undefined | false)[]): string => parts.filter(Boolean).join(', ')
const because = (why: string | undefined, t: Speak): string | undefined =>
	why && t(`since.why.${why}` as 'since.why.cost')
/** A row whose question was not answered says so. */
const row = (label: string, text: string, t: Speak, topic?: SinceTopic): SinceRow => ({
	label: capital(label),
	text: text || t('since.notAsked'),
	...(topic && { topic }),
})
const footwearOf: ReadonlySet<string> = new Set([
	'stop-wearing',
	'mend-first',
	'replace',
	'modify',
	'buy',
])
const topicOf = (what: string): SinceTopic | undefined => {
	if (what === 'raise' || what === 'insert' || what === 'adjust-insert') return 'insert'
	return footwearOf.has(what) ? 'footwear' : undefined
}
const done: Rows = ({ since }, t) =>
	(since.done ?? []).map((one) => {
		const answer = one.answer && t(`since.done.${one.answer}`)
		return row(toDoName(one), told(answer, because(one.why, t)), t, topicOf(one.what))
	})
const troubleOf = (list: Parameters<typeof troublesIn>[0], t: Speak): string | undefined => {
	const found = troublesIn(list)
	if (found.length > 0) return t('since.trouble', { troubles: listed(found.map(troubleName)) })
	return list?.includes('none') ? t('since.noTrouble') : undefined
}
/** What was seen and told of a pair on the foot; what becomes of it stands with the pairs. */
function onFootTold({ onFoot = {} }: Pair, t: Speak): string[] {
	const { left, right, comfortFirst, comfortLater } = onFoot
	const [leftMm, rightMm] = [left?.roomMm, right?.roomMm]
	const one = leftMm ?? rightMm
	const side = sideWords[leftMm === undefined ? 'right' : 'left']
	const room =
		leftMm !== undefined && rightMm !== undefined
			? t('since.room', { left: shown(leftMm), right: shown(rightMm) })
			: one !== undefined && t('since.roomOf', { room: shown(one), side })
	return [
		room,
		comfortFirst !== undefined && t('since.comfortFirst', { first: comfortFirst }),
		comfortLater !== undefined && t('since.comfortLater', { later: comfortLater }),
	].filter((part) => typeof part === 'string')
}
const bought: Rows = ({ since, visit }, t) =>
	(since.bought ?? []).map(({ role, answer, why, pair, trouble }) => {
		const got = visit.footwear?.find(({ id }) => id === pair)
		const said = answer && t(`since.bought.${answer}`)
		const text = told(
			said,
			got?.name,
			because(why, t),
			troubleOf(trouble, t),
			...(got ? onFootTold(got, t) : []),
		)
		return row(pairFor(role), text, t, 'footwear')
	})
const worn: Rows = ({ since }, t) =>
	(since.worn ?? []).map(({ what, side, now, weeks, hoursPerDay, why, trouble }) =>
		row(
			`${wornNames[what]}, ${sideWords[side]}`,
			told(
				now && t(`since.now.${now}`),
				weeks !== undefined && count(weeks, 'week'),
				hoursPerDay !== undefined && t('since.aDay', { hours: count(hoursPerDay, 'hour') }),
				because(why, t),
				troubleOf(trouble, t),
			),
			t,
			'insert',
		),
	)
const kept: Rows = ({ since }, t) => [
	...(since.asksWearingIn
		? [row(t('since.wearingIn'), since.wearingIn ? t(`since.wearingIn.${since.wearingIn}`) : '', t)]
		: []),
	...(since.asksSeason
		? [row(t('since.season'), since.season ? t(`since.season.${since.season}`) : '', t)]
		: []),
	...(since.asksLetter
		? [row(t('since.letter'), since.letter ? t(`since.letter.${since.letter}`) : '', t)]
		: []),
]
type Recorded = NonNullable<Visit['conditions']>[number]
/** The worst pain told at the visit that is looked back to; undefined where none was. */
const worstBefore = (
	{ condition, side }: Recorded,
	{ earlier = [], since }: ReportInput & { since: Since },
): number | undefined =>
	earlier
		.findLast(({ visitDate }) => visitDate === since.visitDate)
		?.conditions?.find((one) => one.condition === condition && one.side === side)?.painWorst
const statusOf = ({ status }: Recorded, t: Speak): string | undefined =>
	status && t(`since.status.${status}`)
const conditions: Rows = (input, t, to) =>
	(input.visit.conditions ?? [])
		.filter(
			({ painNow, daysOff, sessionsMissed, status }) =>
				status !== 'past' || [painNow, daysOff, sessionsMissed].some((one) => one !== undefined),
		)
		.map((one) => {
			const { painNow, painWorst, daysOff, sessionsMissed } = one
			const before = worstBefore(one, input)
			const side = conditionRow(one.condition).sides === 'each' ? `, ${sideWords[one.side]}` : ''
			return row(
				`${conditionInWords(one, to)}${side}`,
				told(
					statusOf(one, t),
					painNow !== undefined && t('since.painNow', { pain: painNow }),
					painWorst !== undefined &&
						(before === undefined
							? t('since.painWorst', { pain: painWorst })
							: t('since.painWorstThen', { pain: painWorst, before })),
					daysOff !== undefined && t('since.daysOff', { days: count(daysOff, 'day') }),
					sessionsMissed !== undefined &&
						t('since.missed', { sessions: count(sessionsMissed, 'session') }),
				),
				t,
			)
		})
const parts: readonly Rows[] = [done, bought, worn, kept, conditions]
/** None where the visit is no re-check. */
export function sinceRows(input: ReportInput, t: Speak, to: For): SinceRow[] {
	const { since } = input.visit
	return since ? parts.flatMap((part) => part({ ...input, since }, t, to)) : []
}
