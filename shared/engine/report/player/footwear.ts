/** Footwear: the next pair, what the clinician marked, the heel raise, the pairs at hand. */
import type { Decision } from '../../visit/decisions.ts'
import { together } from '../../words/en/format.ts'
import type { Speak } from '../../words/speak.ts'
import { isOpenTo, privateTopicOf } from '../../words/statement.ts'
import { capital, featureInWords } from '../../words/words.ts'
import { heading, raiseInWords, type Section, say } from '../base.ts'
import { standingWishes } from '../decided.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { markedLines, markedWork, workKey, workTitle } from '../marked.ts'
import { type Notes, withMarks } from '../notes.ts'
import { readerOf, toldBy } from '../reader.ts'
import { isUrgent } from './actions.ts'

/** A feature to seek or to avoid; without a reason where it is not told, or has no words. */
interface Asked {
	kind: 'seek' | 'avoid'
	words: string
	says?: string | undefined
	mark: string
}
/**
 * Every feature with each of its reasons. No note names the rule of a private reason; to a reader
 * who was not told of it, it gives its feature and nothing else.
 */
function askedOf(input: ReportInput, notes: Notes): Asked[] {
	const { target } = input.assessment.footwear
	const reader = readerOf('player', input)
	return (['seek', 'avoid'] as const).flatMap((kind) =>
		standingWishes(target[kind], kind, input.decisions).flatMap(({ feature, wishes }): Asked[] => {
			const words = featureInWords(feature)
			const open = wishes.filter((wish) => isOpenTo(reader.told, wish))
			if (open.length === 0) return [{ kind, words, mark: '' }]
			return open.map((wish) => ({
				kind,
				words,
				says: toldBy(reader, wish),
				mark: privateTopicOf(wish) === undefined ? notes.mark(wish.basis) : '',
			}))
		}),
	)
}
const wordsOf = (asked: readonly Asked[], kind: Asked['kind']): string =>
	capital(
		[...new Set(asked.filter((one) => one.kind === kind).map(({ words }) => words))].join('; '),
	)
/**
 * One row a reason, so that no reason is read twice: what it asks for, what it speaks against. What
 * a reason has no words for stands under the last one: what was measured.
 */
function reasonRows(input: ReportInput, notes: Notes, t: Speak): string[][] {
	const asked = askedOf(input, notes)
	const unsaid = asked.filter(({ says }) => says === undefined)
	const said = asked.filter(({ says }) => says !== undefined)
	return [
		...Map.groupBy(said, ({ says }) => says ?? ''),
		...(unsaid.length > 0 ? [[t('player.becauseMeasured'), unsaid] as const] : []),
	].map(([says, of]) => [
		withMarks(says, ...new Set(of.map(({ mark }) => mark))),
		wordsOf(of, 'seek'),
		wordsOf(of, 'avoid'),
	])
}
/**
 * What to look for in the next pair and what to stay away from, by reason; it waits while a sign has
 * to be looked at first.
 */
export const nextPair: Section = (input, notes, t) => {
	const { screening, footwear } = input.assessment
	if (isUrgent(screening.action)) return []
	const { contradictions } = footwear
	const reader = readerOf('player', input)
	const rows = reasonRows(input, notes, t)
	if (rows.length === 0) return []
	return [
		heading(t('player.nextPair')),
		{
			kind: 'table',
			caption: t('player.nextCaption'),
			head: [t('player.because'), t('player.seek'), t('player.avoid')],
			rows,
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
