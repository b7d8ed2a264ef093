/** What to do first: the warning over everything, and at most three actions. */
import type { Assessment } from '../../findings/assessment.ts'
import type { Speak } from '../../words/speak.ts'
import { actionWords, capital, dateWords, shown } from '../../words/words.ts'
import { heading, type Section, say, small } from '../base.ts'
import type { BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'

const mostActions = 3
type ActionItem = BlockOf<'actions'>['items'][number]

/** Where screening asks for more than a letter, that comes before all else. */
export const alert: Section = ({ assessment: { screening }, decisions }, notes, t) => {
	if (screening.action === 'proceed' || screening.action === 'letter') return []
	const reasons = screening.items
		.filter(({ state, action }) => state === 'yes' && action !== 'proceed' && action !== 'letter')
		.map((item) => `${item.says} ${notes.mark(item.basis)}`)
	const done = decisions.referralDone
		? t('player.doneSoFar', { done: decisions.referralDone })
		: t('player.waits')
	return [
		{
			kind: 'alert',
			title: t('player.first', { action: actionWords[screening.action] }),
			text: `${reasons.join(' ')} ${done}`.trim(),
		},
	]
}
/** At most three actions: the clinician's own, or what the measures propose. */
export function actionsOf(
	{ assessment, decisions }: ReportInput,
	t: Speak,
): { items: ActionItem[]; decided: boolean } {
	if (decisions.actions.length > 0) return { items: decisions.actions, decided: true }
	const proposed = [
		...referralAction(assessment, t),
		...sizeAction(assessment, t),
		...measuringAction(assessment, t),
	]
	return { decided: false, items: proposed.slice(0, mostActions) }
}
function referralAction({ screening: { action } }: Assessment, t: Speak): ActionItem[] {
	if (action === 'proceed') return []
	return [
		{
			what: capital(actionWords[action]),
			when: action === 'letter' ? t('player.whenFourWeeks') : t('player.whenNow'),
			who: t('player.whoClinician'),
		},
	]
}
function sizeAction({ sizing: { insideLengthMm } }: Assessment, t: Speak): ActionItem[] {
	if (!insideLengthMm) return []
	return [
		{
			what: t('player.chooseInside', {
				min: shown(insideLengthMm.min),
				max: shown(insideLengthMm.max),
			}),
			when: t('player.whenPurchase'),
			who: t('player.whoYou'),
		},
	]
}
function measuringAction({ growth }: Assessment, t: Speak): ActionItem[] {
	if (!growth?.measureAgainBy) return []
	return [
		{
			what: t('player.measureAgain'),
			when: t('player.whenBy', { date: dateWords(growth.measureAgainBy) }),
			who: t('player.whoGuardian'),
		},
	]
}
/** A draft says that the actions are only proposed. */
export const doNow: Section = (input, _notes, t) => {
	const { items, decided } = actionsOf(input, t)
	if (items.length === 0) return [heading(t('player.doNow')), say(t('player.nothingDecided'))]
	return [
		heading(t('player.doNow')),
		...(!decided && input.draft ? [small(t('player.proposed'))] : []),
		{ kind: 'actions', items },
	]
}
