/** Footwear: the next pair, what the clinician marked, the heel raise, the pairs at hand. */
import type { FootwearResult } from '../../findings/assessment.ts'
import type { Decisions } from '../../visit/decisions.ts'
import { capital, featureInWords } from '../../words/words.ts'
import { heading, raiseInWords, type Section, say } from '../base.ts'
import { standingWishes } from '../decided.ts'
import type { Block } from '../document.ts'
import { markedLines } from '../marked.ts'
import type { Notes } from '../notes.ts'

interface ReasonRow {
	seek: string[]
	avoid: string[]
	marks: Set<string>
}
/** One row a reason, so that no reason is read twice: what it asks for, what it speaks against. */
function reasonRows(
	{ target }: FootwearResult,
	decisions: Decisions,
	notes: Notes,
): Map<string, ReasonRow> {
	const rows = new Map<string, ReasonRow>()
	for (const kind of ['seek', 'avoid'] as const)
		for (const { feature, wishes } of standingWishes(target[kind], kind, decisions))
			for (const wish of wishes) {
				const row = rows.get(wish.says) ?? { seek: [], avoid: [], marks: new Set() }
				rows.set(wish.says, row)
				row.marks.add(notes.mark(wish.basis))
				const words = featureInWords(feature)
				if (!row[kind].includes(words)) row[kind].push(words)
			}
	return rows
}
/** What to look for in the next pair and what to stay away from, by reason. */
export const nextPair: Section = ({ assessment: { footwear }, decisions }, notes, t) => {
	const rows = reasonRows(footwear, decisions, notes)
	if (rows.size === 0) return []
	const cell = (list: string[]) => capital(list.join('; '))
	return [
		heading(t('player.nextPair')),
		{
			kind: 'table',
			caption: t('player.nextCaption'),
			head: [t('player.because'), t('player.seek'), t('player.avoid')],
			rows: [...rows].map(([says, { seek, avoid, marks }]) => [
				`${says} ${[...marks].join(' ')}`,
				cell(seek),
				cell(avoid),
			]),
			widths: ['*', 130, 92],
		},
		...footwear.contradictions.map((contradiction) =>
			say(t('player.pullApart', { says: contradiction.says })),
		),
	]
}
/** The raise the clinician decided; before there is a decision, the one the measures suggest. */
export const raise: Section = ({ assessment: { ankle }, decisions }, _notes, t) => {
	const decided = raiseInWords(decisions.heelRaiseMm, t)
	const suggested = decisions.heelRaiseMm ? undefined : raiseInWords(ankle.heelRaiseMm, t)
	const raised = decided ?? suggested
	if (raised === undefined) return []
	const words = decided
		? t('player.raiseDecided', { raise: raised })
		: t('player.raiseSuggested', { raise: raised })
	return [heading(t('player.raise')), say(`${words} ${t('player.raiseHow')}`)]
}
/** What the clinician marked: models to try on, changes to the boot and lacing. */
export const marked: Section = ({ decisions }, _notes, t) => {
	const wordsOf = (mark: 'model' | 'work') =>
		markedLines(decisions, mark).map((line) => line.says ?? '')
	const models = wordsOf('model')
	const work = wordsOf('work')
	const toTry: Block[] = [
		heading(t('player.toTry')),
		{ kind: 'list', items: models },
		say(t('player.toTryHow')),
	]
	const toChange: Block[] = [heading(t('player.work')), { kind: 'list', items: work }]
	return [...(models.length > 0 ? toTry : []), ...(work.length > 0 ? toChange : [])]
}
/** The pairs at hand with their verdicts. */
export const pairs: Section = ({ visit, assessment: { footwear } }, _notes, t) => {
	if (footwear.current.length === 0) return []
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
			rows: footwear.current.map(({ id, verdict, says }) => [
				visit.footwear?.find((pair) => pair.id === id)?.name ?? id,
				verdicts[verdict],
				says,
			]),
			widths: [110, 90, '*'],
		},
	]
}
