/** The next pairs by what they are for: what to look for, why, and which to try on. */
import type { Kept, RolePair } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import type { Speak } from '../../words/speak.ts'
import { capital } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { BlockOf } from '../document.ts'
import { fitIn, staysOff } from '../fit.ts'
import type { ReportInput } from '../inputs.ts'
import { markedLines, modelWords } from '../marked.ts'
import { shopPairs } from '../page-one/shop.ts'
import { pairName, roleWords } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'
import { besideCard, beyondWords } from './beside-card.ts'
import { pairsAlike, pairsToFind } from './pairs-alike.ts'

type Pair = Kept<RolePair>
type Row = BlockOf<'facts'>['rows'][number]
/** What the other pairs ask beside that of page one; it waits while buying does. */
export const nextPair: Section = (input, _notes, t) => {
	const plan = planOf(input)
	const reader = readerOf('player', input)
	const pairs = pairsToFind(plan)
	const rows = [...keptPairs(plan, input, t), ...rowsBeyondCard(pairs, input, t)]
	const further = [...besideWords(pairs, reader), ...pulledApart(pairs, reader)].join(' ')
	if (rows.length === 0 && further === '') return []
	return [
		heading(t('player.nextPair')),
		...(rows.length > 0 ? [{ kind: 'facts' as const, rows }] : []),
		...(further === '' ? [] : [say(further)]),
	]
}
/** A row for pairs that are alike; of those on the card of page one, what it had no room for. */
function rowsBeyondCard(pairs: readonly Pair[], input: ReportInput, t: Speak): Row[] {
	const card = shopPairs(input, t)
	return pairsAlike(pairs, planOf(input), t).flatMap((alike) => {
		if (!card || !alike.ids.some((id) => card.ids.includes(id)))
			return [{ label: alike.names, text: besideCard(alike, card, t) }]
		const beyond = beyondWords(alike, t)
		return beyond === '' ? [] : [{ label: t('pageOne.moreForPair'), text: beyond }]
	})
}
/** Where a pair at hand serves, nothing needs to be bought: a row for each pair. */
function keptPairs(plan: SettledPlan, { visit }: ReportInput, t: Speak): Row[] {
	if (buyingWaits(plan.gate)) return []
	const off = plan.owned.filter((pair) => staysOff(fitIn(pair, visit, plan))).map(({ id }) => id)
	const kept = plan.pairs.filter(
		({ means, ownedPair }) =>
			means !== 'buy' && ownedPair !== undefined && !off.includes(ownedPair),
	)
	const alike = Map.groupBy(kept, ({ means, ownedPair }) => `${means} ${ownedPair}`)
	return [...alike.values()].map((group) => {
		const [{ means = 'keep', ownedPair = '' } = {}] = group
		const roles = [...new Set(group.map(({ role }) => roleWords(role, t)))]
		return {
			label: capital(roles.join(', ')),
			text: t(means === 'keep' ? 'player.keepPair' : 'player.wearPair', {
				pair: pairName(ownedPair, visit, t),
			}),
		}
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
