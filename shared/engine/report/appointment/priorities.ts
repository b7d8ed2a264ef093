/** What is done first, with who and when: the clinician's own actions, or those of the plan. */
import { dateWords } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import { prioritiesNow } from '../priorities-now.ts'

export const priorities: Section = (input, _notes, t) => {
	const { decisions, visit } = input
	const planned = prioritiesNow(input).map(({ says, who, when }) => ({
		what: says,
		who,
		when:
			when <= visit.visitDate ? t('sheet.today') : t('player.whenBy', { date: dateWords(when) }),
	}))
	const items = decisions.actions.length > 0 ? decisions.actions : planned
	return [
		heading(t('sheet.priorities')),
		items.length > 0 ? { kind: 'actions', items } : say(t('player.nothingDecided')),
	]
}
