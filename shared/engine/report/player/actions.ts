/** What to do first: the warning over everything, and at most three actions. */
import { actions, type Gate, type KeptAssessment } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import { paperName } from '../../words/names.ts'
import type { Speak } from '../../words/speak.ts'
import type { Stated, StatementCode } from '../../words/statement.ts'
import { capital, dateWords, plainActionWords } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import type { Block, BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { type Notes, withMarks } from '../notes.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { buyingWaits, type Danger, dangerOf, waits } from '../waits.ts'

const mostActions = 3
type ActionItem = BlockOf<'actions'>['items'][number]

/**
 * What the danger rests on, most urgent first, in the reader's words; `isWhole` where that includes
 * the most urgent of it.
 */
function reasonsFor(
	reader: Reader,
	{ screening, findings }: Pick<KeptAssessment, 'screening' | 'findings'>,
	{ action: highest, because }: Danger,
	notes: Notes | undefined,
): { isWhole: boolean; said: string[] } {
	const ofSigns = screening.items.filter((item) => item.state === 'yes')
	const found = [...ofSigns, ...heldByFacts(findings, screening)]
		.filter(({ id }) => because.has(id))
		.toSorted((one, other) => actions.indexOf(other.action) - actions.indexOf(one.action))
		.flatMap(({ action, basis, ...item }) => {
			const says = toldBy(reader, item)
			return says === undefined ? [] : [{ action, says: withMarks(says, notes?.mark(basis) ?? '') }]
		})
	return {
		isWhole: found.some(({ action }) => action === highest),
		said: [...new Set(found.map(({ says }) => says))],
	}
}
/** Its page has a section of its own. */
const ofFootReview: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'screening.foot-at-risk',
])
/** What holds without a sign that asks for a doctor: severe pain, an operation not cleared. */
const heldByFacts = (
	findings: KeptAssessment['findings'],
	{ items }: KeptAssessment['screening'],
) =>
	findings
		.filter(
			({ id, level, topic, code }) =>
				topic === 'screening' &&
				level === 'caution' &&
				!ofFootReview.has(code) &&
				!items.some((item) => item.id === id),
		)
		.map((finding) => ({ ...finding, action: 'proceed' as const }))
/** What is stopped, over everything else: sport first, whatever else is asked for. */
function titleOf({ action, isUrgent: urgent, stops }: Danger, t: Speak): string {
	const plain = capital(plainActionWords[action])
	if (stops.includes('sport'))
		return urgent ? t('player.stopFirst', { action: plain }) : t('player.stopNow')
	return urgent ? t('player.first', { action: plainActionWords[action] }) : t('player.heldNow')
}
/** A sign without a side holds both limbs: then the one that hurts is meant. */
const noWeightIn = (sides: Danger['noWeight'], who: Who): string[] =>
	sides.length === 2 ? [who.noWeightBoth] : sides.map((side) => who.noWeight(side))
/**
 * Where the gate stops sport, running or weight, or asks for more than a letter: what to stop, why,
 * and what was done. @param notes where sources are numbered
 */
export function alertFor(reader: Reader, input: ReportInput, t: Speak, notes?: Notes): Block[] {
	const { visit, assessment, decisions } = input
	const danger = dangerOf(planOf(input).gate, visit.visitDate)
	if (!danger) return []
	const { isWhole, said } = reasonsFor(reader, assessment, danger, notes)
	const { action, stops, noWeight, since } = danger
	const who = whoFor(reader, input, t)
	const done = decisions.referralDone
		? [t('player.doneSoFar', { done: decisions.referralDone })]
		: []
	return [
		{
			kind: 'alert',
			title: titleOf(danger, t),
			text: [
				...stops.map((stop) => who.stop[stop]),
				...noWeightIn(noWeight, who),
				// what is private gives nothing away, and still is urgent
				...(isWhole || action === 'proceed' ? [] : [t('player.signFound')]),
				...(since === undefined ? [] : [t('player.stillOpen', { date: dateWords(since) })]),
				...(said.length > 0 ? [who.reasons(said.join(' '))] : []),
				...done,
			].join(' '),
		},
	]
}
export const alert: Section = (input, notes, t) =>
	alertFor(readerOf('player', input), input, t, notes)
/** Who is meant by whom: a guardian reads of the player by name. */
interface Who {
	stop: Readonly<Record<Danger['stops'][number], string>>
	noWeight: (side: string) => string
	noWeightBoth: string
	/** Reasons speak to the player; a guardian reads them as what the player is told. */
	reasons: (reasons: string) => string
	/** Whoever does a priority. */
	does: Readonly<Record<string, string>>
}
function whoFor({ audience }: Reader, { visit }: ReportInput, t: Speak): Who {
	const name = paperName(visit.player).givenName
	const doctor = t('player.whoDoctor')
	return audience === 'guardian'
		? {
				stop: {
					sport: t('guardian.stopSport', { name }),
					match: t('guardian.stopMatch', { name }),
					impact: t('guardian.stopImpact', { name }),
				},
				noWeight: (side) => t('guardian.noWeight', { name, side }),
				noWeightBoth: t('guardian.noWeightBoth', { name }),
				reasons: (reasons) => t('guardian.toldPlayer', { name, reasons }),
				does: {
					clinician: t('guardian.whoClinician'),
					player: t('guardian.whoGuardian', { name }),
					guardian: t('guardian.whoYou'),
					doctor,
				},
			}
		: {
				stop: {
					sport: t('player.stopSport'),
					match: t('player.stopMatch'),
					impact: t('player.stopImpact'),
				},
				noWeight: (side) => t('player.noWeight', { side }),
				noWeightBoth: t('player.noWeightBoth'),
				reasons: (reasons) => reasons,
				does: {
					clinician: t('player.whoClinician'),
					player: t('player.whoYou'),
					guardian: t('player.whoGuardian'),
					doctor,
				},
			}
}
/** What a priority is about: it is silent while that waits, or where the alert says it. */
const silentWhile: Readonly<Record<string, (gate: Gate, today: string) => boolean>> = {
	'priority.act': (gate, today) => dangerOf(gate, today)?.isUrgent === true,
	'priority.clear': (gate, today) => dangerOf(gate, today) !== undefined,
	'priority.raise': (gate) => waits(gate, 'raise'),
	'priority.insert': (gate) => bothSides.every((side) => waits(gate, 'insert', side)),
	'priority.replace': buyingWaits,
	'priority.buy': buyingWaits,
}
const isSilent = ({ code = '' }: Stated, gate: Gate, today: string): boolean =>
	silentWhile[code]?.(gate, today) ?? false
/** At most three actions: the clinician's own, or the priorities of the plan. */
function actionsOf(reader: Reader, input: ReportInput, t: Speak): ActionItem[] {
	const { decisions, visit } = input
	if (decisions.actions.length > 0) return decisions.actions
	const who = whoFor(reader, input, t)
	const { gate, priorities } = planOf(input)
	const proposed = priorities.flatMap((priority): ActionItem[] => {
		const what = isSilent(priority, gate, visit.visitDate) ? undefined : toldBy(reader, priority)
		if (what === undefined) return []
		const { when } = priority
		return [
			{
				what,
				when:
					when <= visit.visitDate
						? t('player.whenNow')
						: t('player.whenBy', { date: dateWords(when) }),
				who: who.does[priority.who] ?? t('common.notStated'),
			},
		]
	})
	return proposed.slice(0, mostActions)
}
/** A draft says that what nobody decided is only proposed: once, for the whole page. */
const proposedNote = (input: ReportInput, t: Speak): Block[] =>
	input.draft && (input.decisions.actions.length === 0 || planOf(input).open.length > 0)
		? [small(t('player.proposed'))]
		: []
/** What to do first; nothing more where the alert says it all. */
export function doNowFor(reader: Reader, input: ReportInput, t: Speak): Block[] {
	const items = actionsOf(reader, input, t)
	const isSaid = dangerOf(planOf(input).gate, input.visit.visitDate) !== undefined
	if (items.length === 0 && isSaid) return proposedNote(input, t)
	return [
		heading(t('player.doNow')),
		...proposedNote(input, t),
		items.length > 0 ? { kind: 'actions', items } : say(t('player.nothingDecided')),
	]
}
export const doNow: Section = (input, _notes, t) => doNowFor(readerOf('player', input), input, t)
