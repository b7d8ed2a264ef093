/** What to do first: the warning over everything, and at most three actions. */
import { actions, type KeptAssessment } from '../../findings/assessment.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, dateWords, plainActionWords, shown } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import type { Block, BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { type Notes, withMarks } from '../notes.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { isUrgent, newBootsWait } from './waits.ts'

const mostActions = 3
type ActionItem = BlockOf<'actions'>['items'][number]

/**
 * What was found that is urgent, most urgent first, in the reader's words; `isWhole` where that
 * includes the most urgent of it.
 */
function reasonsFor(
	reader: Reader,
	{ action: highest, items }: KeptAssessment['screening'],
	notes: Notes | undefined,
): { isWhole: boolean; said: string[] } {
	const urgent = items
		.filter((item) => item.state === 'yes' && isUrgent(item.action))
		.toSorted((one, other) => actions.indexOf(other.action) - actions.indexOf(one.action))
		.flatMap(({ action, basis, ...item }) => {
			const says = toldBy(reader, item)
			return says === undefined ? [] : [{ action, says: withMarks(says, notes?.mark(basis) ?? '') }]
		})
	return {
		isWhole: urgent.some(({ action }) => action === highest),
		said: [...new Set(urgent.map(({ says }) => says))],
	}
}
/**
 * Where screening asks for more than a letter: the most urgent action, why, and what was done.
 * @param notes where sources are numbered
 */
export function alertFor(reader: Reader, input: ReportInput, t: Speak, notes?: Notes): Block[] {
	const { screening } = input.assessment
	if (!isUrgent(screening.action)) return []
	const { isWhole, said } = reasonsFor(reader, screening, notes)
	const who = whoFor(reader, input, t)
	const done = input.decisions.referralDone
		? t('player.doneSoFar', { done: input.decisions.referralDone })
		: t('player.waits')
	return [
		{
			kind: 'alert',
			title: t('player.first', { action: plainActionWords[screening.action] }),
			text: [
				who.stop,
				// what is private gives nothing away, and still is urgent
				...(isWhole ? [] : [t('player.signFound')]),
				...(said.length > 0 ? [who.reasons(said.join(' '))] : []),
				done,
			].join(' '),
		},
	]
}
export const alert: Section = (input, notes, t) =>
	alertFor(readerOf('player', input), input, t, notes)
/** Who is meant by whom: a guardian reads of the player by name. */
interface Who {
	stop: string
	/** Reasons speak to the player; a guardian reads them as what the player is told. */
	reasons: (reasons: string) => string
	clinician: string
	you: string
	guardian: string
}
function whoFor({ audience }: Reader, { visit }: ReportInput, t: Speak): Who {
	const name = visit.player.givenName
	return audience === 'guardian'
		? {
				stop: t('guardian.stopSport', { name }),
				reasons: (reasons) => t('guardian.toldPlayer', { name, reasons }),
				clinician: t('guardian.whoClinician'),
				you: t('guardian.whoYou'),
				guardian: t('guardian.whoGuardian', { name }),
			}
		: {
				stop: t('player.stopSport'),
				reasons: (reasons) => reasons,
				clinician: t('player.whoClinician'),
				you: t('player.whoYou'),
				guardian: t('player.whoGuardian'),
			}
}
/** At most three actions: the clinician's own, or what the measures propose. */
export function actionsOf(
	reader: Reader,
	input: ReportInput,
	t: Speak,
): { items: ActionItem[]; decided: boolean } {
	const { assessment, decisions } = input
	if (decisions.actions.length > 0) return { items: decisions.actions, decided: true }
	const who = whoFor(reader, input, t)
	const proposed = [
		...referralAction(assessment, who, t),
		...sizeAction(assessment, who, t),
		...measuringAction(assessment, who, t),
	]
	return { decided: false, items: proposed.slice(0, mostActions) }
}
function referralAction(
	{ screening: { action } }: KeptAssessment,
	who: Who,
	t: Speak,
): ActionItem[] {
	if (action === 'proceed') return []
	return [
		{
			what: capital(plainActionWords[action]),
			when: action === 'letter' ? t('player.whenFourWeeks') : t('player.whenNow'),
			who: who.clinician,
		},
	]
}
/** Boots wait while a sign has to be looked at first. */
function sizeAction(assessment: KeptAssessment, who: Who, t: Speak): ActionItem[] {
	const { sizing, footwear } = assessment
	const { insideLengthMm } = sizing
	if (!insideLengthMm || newBootsWait(assessment)) return []
	const toReplace = footwear.current.some((pair) => pair.verdict === 'replace')
	return [
		{
			what: t('player.chooseInside', {
				min: shown(insideLengthMm.min),
				max: shown(insideLengthMm.max),
			}),
			when: toReplace ? t('player.whenNow') : t('player.whenPurchase'),
			who: who.you,
		},
	]
}
function measuringAction({ growth }: KeptAssessment, who: Who, t: Speak): ActionItem[] {
	if (!growth?.measureAgainBy) return []
	return [
		{
			what: t('player.measureAgain'),
			when: t('player.whenBy', { date: dateWords(growth.measureAgainBy) }),
			who: who.guardian,
		},
	]
}
/** A draft says that the actions are only proposed. */
export const doNow: Section = (input, _notes, t) => {
	const { items, decided } = actionsOf(readerOf('player', input), input, t)
	if (items.length === 0) return [heading(t('player.doNow')), say(t('player.nothingDecided'))]
	return [
		heading(t('player.doNow')),
		...(!decided && input.draft ? [small(t('player.proposed'))] : []),
		{ kind: 'actions', items },
	]
}
