/** The next pairs by what they are for: what to look for, why, and which to try on. */
import type { Kept, RolePair } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import type { Speak } from '../../words/speak.ts'
import { capital } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { markedLines, modelWords } from '../marked.ts'
import { withMarks } from '../notes.ts'
import { beyondCard, shopPairs } from '../page-one/shop.ts'
import { pairName, roleWords } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'
import { reasonsForPairs } from './pair-reasons.ts'
import { featuresInWords, pairsAlike, pairsToFind } from './pairs-alike.ts'

type Pair = Kept<RolePair>
/** What to look for in the next pairs and what to stay away from; it waits while buying does. */
export const nextPair: Section = (input, notes, t) => {
	const plan = planOf(input)
	const reader = readerOf('player', input)
	const pairs = pairsToFind(plan)
	const kept = keptPairs(plan, input, t)
	const reasons = reasonsForPairs(reader, input, pairs).map(({ says, finding }) =>
		withMarks(says, finding ? notes.mark(finding.basis) : ''),
	)
	const rows = rowsBeyondCard(pairs, input, t)
	const table: Block = {
		kind: 'table',
		caption: t('player.nextCaption'),
		head: [t('player.pair'), t('player.seek'), t('player.avoid')],
		rows,
		widths: [130, '*', '*'],
	}
	const blocks = [
		...kept.map(say),
		...(rows.length > 0 ? [table] : []),
		...besideWords(pairs, reader).map(say),
		...pulledApart(pairs, reader).map(say),
		...(reasons.length > 0
			? [heading(t('common.why'), { level: 2 }), { kind: 'list' as const, items: reasons }]
			: []),
	]
	return blocks.length === 0 ? [] : [heading(t('player.nextPair')), ...blocks]
}
/** A row for pairs that are alike; of those on the card of page one, what it had no room for. */
function rowsBeyondCard(pairs: readonly Pair[], input: ReportInput, t: Speak): string[][] {
	const onCard = shopPairs(input, t)?.ids ?? []
	return pairsAlike(pairs, planOf(input), t).flatMap((alike) => {
		const isOnCard = alike.ids.some((id) => onCard.includes(id))
		const { seek, avoid } = isOnCard ? beyondCard(alike) : alike
		if (isOnCard && seek.length + avoid.length === 0) return []
		const title = isOnCard ? t('pageOne.moreForPair') : alike.title
		return [[title, capital(featuresInWords(seek)), capital(featuresInWords(avoid))]]
	})
}
/** Where a pair at hand serves, nothing needs to be bought: a line for each pair. */
function keptPairs({ gate, pairs }: SettledPlan, { visit }: ReportInput, t: Speak): string[] {
	if (buyingWaits(gate)) return []
	const kept = pairs.filter(({ means, ownedPair }) => means !== 'buy' && ownedPair !== undefined)
	const alike = Map.groupBy(kept, ({ means, ownedPair }) => `${means} ${ownedPair}`)
	return [...alike.values()].map((group) => {
		const [{ means = 'keep', ownedPair = '' } = {}] = group
		const roles = [...new Set(group.map(({ role }) => roleWords(role, t)))]
		return t(means === 'keep' ? 'player.keepPair' : 'player.wearPair', {
			role: capital(roles.join(', ')),
			pair: pairName(ownedPair, visit, t),
		})
	})
}
/** Why a pair that is kept does not do where another is looked for: each said once. */
const besideWords = (pairs: readonly Pair[], reader: Reader): string[] => [
	...new Set(
		pairs
			.filter(({ means }) => means === 'buy')
			.flatMap(({ beside = [] }) => beside.flatMap((one) => toldBy(reader, one) ?? [])),
	),
]
/** What gave way, and to what: each said once. */
const pulledApart = (pairs: readonly Pair[], reader: Reader): string[] => [
	...new Set(pairs.flatMap(({ settled }) => settled.flatMap((lost) => toldBy(reader, lost) ?? []))),
]
/** Models of the shelf to try on, best first. */
export const toTry: Section = (input, _notes, t) => {
	const { gate, pairs } = planOf(input)
	if (buyingWaits(gate) || waits(gate, 'shelf')) return []
	const { ranked } = input.assessment.footwear
	const models = [...new Set(pairs.flatMap(({ shelf }) => shelf))].flatMap((id) => {
		const model = ranked.find((one) => one.id === id)
		if (model) return [modelWords(model)]
		return markedLines(input.decisions, 'model').flatMap((line) =>
			line.findingId === `model.${id}` && line.says !== undefined ? [line.says] : [],
		)
	})
	if (models.length === 0) return []
	return [heading(t('player.toTry')), { kind: 'list', items: models }, say(t('player.toTryHow'))]
}
