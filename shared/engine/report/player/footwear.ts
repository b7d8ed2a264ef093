/** Footwear: the next pair, what the clinician marked, the heel raise, the pairs at hand. */
import type { Decision } from '../../visit/decisions.ts'
import { together } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, featureInWords } from '../../words/words.ts'
import { heading, raiseInWords, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { markedLines, markedWork, workKey, workTitle } from '../marked.ts'
import { withMarks } from '../notes.ts'
import { readerOf, toldBy } from '../reader.ts'
import { type ReasonRow, reasonRows } from './reason-rows.ts'
import { isUrgent, newBootsWait } from './waits.ts'

/**
 * What to look for in the next pair and what to stay away from, by reason; it waits while a sign has
 * to be looked at first.
 */
export const nextPair: Section = (input, notes, t) => {
	if (newBootsWait(input.assessment)) return []
	const { contradictions } = input.assessment.footwear
	const reader = readerOf('player', input)
	const rows = reasonRows(input, notes, t)
	if (rows.size === 0) return []
	const cell = (features: ReasonRow['seek']) =>
		capital([...features].map(featureInWords).join('; '))
	return [
		heading(t('player.nextPair')),
		{
			kind: 'table',
			caption: t('player.nextCaption'),
			head: [t('player.because'), t('player.seek'), t('player.avoid')],
			rows: [...rows].map(([says, { seek, avoid, marks }]) => [
				withMarks(says, ...marks),
				cell(seek),
				cell(avoid),
			]),
			widths: ['*', 130, 92],
		},
		...contradictions.map((contradiction) =>
			say(
				t('player.pullApart', {
					says:
						toldBy(reader, contradiction) ??
						t('player.askWhich', { feature: capital(featureInWords(contradiction.feature)) }),
				}),
			),
		),
	]
}
/** The heel raise as a marked change; once its height is decided, that alone is said. */
const isHeelRaise = (line: Decision): boolean => markedWork(line)?.id === 'heel-raise'
/**
 * The raise the clinician decided; before there is a decision, the one the measures suggest, unless
 * a sign has to be looked at first.
 */
export const raise: Section = ({ assessment: { ankle, screening }, decisions }, _notes, t) => {
	const decided = raiseInWords(decisions.heelRaiseMm, t)
	const isOpen =
		decisions.heelRaiseMm === undefined &&
		!isUrgent(screening.action) &&
		!markedLines(decisions, 'work').some(isHeelRaise)
	const suggested = isOpen ? raiseInWords(ankle.heelRaiseMm, t) : undefined
	const raised = decided ?? suggested
	if (raised === undefined) return []
	const words = decided
		? t('player.raiseDecided', { raise: raised })
		: t('player.raiseSuggested', { raise: raised })
	return [heading(t('player.raise')), say(`${words} ${t('player.raiseHow')}`)]
}
/**
 * A change that the clinician marked, in the player's words: what is done, where it ends, what to
 * mind. One that is not asked for any more is called by its name.
 */
function workToDo(line: Decision, input: ReportInput, t: Speak): string {
	const { modifications = [], lacing = [] } = input.assessment.footwear
	const reader = readerOf('player', input)
	const work = [...modifications, ...lacing].find(
		(one) => line.findingId === `work.${workKey(one)}`,
	)
	const marked = markedWork(line)
	const name = marked && toldBy(reader, marked.name)
	if (marked === undefined || name === undefined) return t('player.workAsk')
	const { limits, cautions = [] } = work?.stated ?? {}
	const said = [work, limits, ...cautions].flatMap(
		(statement) => (statement && toldBy(reader, statement)) ?? [],
	)
	return together(`${workTitle({ name, side: marked.side })}.`, ...said)
}
/** What the clinician marked: models to try on, changes to the boot and lacing. */
export const marked: Section = (input, _notes, t) => {
	const { decisions } = input
	const models = markedLines(decisions, 'model').map((line) => line.says ?? '')
	const work = markedLines(decisions, 'work')
		.filter((line) => decisions.heelRaiseMm === undefined || !isHeelRaise(line))
		.map((line) => workToDo(line, input, t))
	const toTry: Block[] = [
		heading(t('player.toTry')),
		{ kind: 'list', items: models },
		say(t('player.toTryHow')),
	]
	const toChange: Block[] = [heading(t('player.work')), { kind: 'list', items: work }]
	return [...(models.length > 0 ? toTry : []), ...(work.length > 0 ? toChange : [])]
}
/** The pairs at hand with their verdicts. */
export const pairs: Section = (input, _notes, t) => {
	const { visit, assessment } = input
	const { current } = assessment.footwear
	if (current.length === 0) return []
	const reader = readerOf('player', input)
	const verdicts = {
		keep: t('player.keep'),
		change: t('player.change'),
		replace: t('player.replace'),
		unknown: t('player.unknown'),
	}
	return [
		heading(t('player.pairs')),
		{
			kind: 'table',
			caption: t('player.pairsCaption'),
			head: [t('player.pair'), t('player.verdict'), t('common.why')],
			rows: current.map((pair) => [
				visit.footwear?.find(({ id }) => id === pair.id)?.name ?? pair.id,
				verdicts[pair.verdict],
				toldBy(reader, pair) ?? '',
			]),
			widths: [110, 90, '*'],
		},
	]
}
