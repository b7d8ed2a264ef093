/** After the visit: what else was found, when to stop and call, when to come again. */
import type { Decisions } from '../../visit/decisions.ts'
import { capital, dateWords, defaultWarningSigns } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { StandingLine } from '../decided.ts'
import { withMarks } from '../notes.ts'
import { linesFor, readerOf } from '../reader.ts'

/** Topics that have sections of their own. */
const toldAbove = new Set(['sizing', 'growth', 'footwear'])
/**
 * Safety words always stand; the rest only where it matters or the clinician chose to say it. The
 * clinician's own lines always stand.
 */
function isTold({ finding, topic, level, id }: StandingLine, decisions: Decisions): boolean {
	if (finding === undefined) return true
	if (toldAbove.has(topic)) return false
	if (topic === 'screening') return level !== 'stop'
	const chosen = decisions.lines.some((line) => line.findingId === id)
	return level === 'caution' || level === 'stop' || chosen
}
/** What stands after the decisions and has no section of its own. */
export const more: Section = (input, notes, t) => {
	const lines = linesFor(readerOf('player', input), input).filter((line) =>
		isTold(line, input.decisions),
	)
	if (lines.length === 0) return []
	return [
		heading(t('player.more')),
		{
			kind: 'list',
			items: lines.map(({ says, finding }) =>
				withMarks(says, finding ? notes.mark(finding.basis) : ''),
			),
		},
	]
}
/** When to stop sport and whom to call. */
export const warning: Section = ({ decisions, clinic }, _notes, t) => [
	heading(t('player.stop')),
	say(clinic.phone ? t('player.stopIfUs', { phone: clinic.phone }) : t('player.stopIf')),
	{ kind: 'list', items: (decisions.warningSigns ?? defaultWarningSigns).map(capital) },
	say(t('player.emergency')),
]
/** The date that was decided, else the one that growth suggests. */
export const review: Section = ({ decisions, assessment }, _notes, t) => {
	const suggested = assessment.growth?.measureAgainBy
	const undecided = suggested
		? t('player.reviewSuggested', { date: dateWords(suggested) })
		: t('player.reviewNone')
	const when = decisions.reviewDate
		? t('player.reviewOn', { date: dateWords(decisions.reviewDate) })
		: undecided
	return [heading(t('player.review')), say(`${when} ${t('player.reviewEarlier')}`)]
}
