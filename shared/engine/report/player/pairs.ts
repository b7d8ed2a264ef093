/** The pairs at hand: what to do with each, and why. */
import type { Kept, OwnedPair } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import type { Speak } from '../../words/speak.ts'
import type { StatementCode } from '../../words/statement.ts'
import { capital, dateWords } from '../../words/words.ts'
import { heading, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { awaitsFootReview, buyingWaits, waits } from '../waits.ts'

type Owned = Kept<OwnedPair>
/** What is said of a pair that asks for another one: silent while buying waits. */
const asksForAnother: ReadonlySet<string> = new Set<StatementCode>([
	'pairs.worn-out',
	'pairs.too-short',
	'pairs.outgrown',
	'pairs.studs-worn',
	'pairs.sole-separated',
	'pairs.counter-collapsed',
	'pairs.insole-board-split',
	'pairs.upper-cracked',
	'pairs.outgrown-by',
])
interface Part {
	code: string
}
const partsOf = (params: Owned['params']): readonly Part[] | undefined =>
	Array.isArray(params?.['said']) ? (params['said'] as readonly Part[]) : undefined
/** The reason without what asks for a purchase; none where it cannot be told apart. */
function withoutBuying(pair: Owned, reader: Reader): string {
	const parts = partsOf(pair.params)
	if (!parts) return ''
	const said = parts.filter(({ code }) => !asksForAnother.has(code))
	return toldBy(reader, { ...pair, params: { ...pair.params, said } }) ?? ''
}
/** What to do with a pair. One to be replaced is not worn while nothing may be bought. */
export function verdictWords(
	{ verdict, by }: Pick<Owned, 'verdict' | 'by'>,
	isBuying: boolean,
	t: Speak,
): string {
	if (verdict === 'replace' && !isBuying) return t('player.stopWearing')
	if (verdict === 'replace' && by !== undefined)
		return t('player.replaceBy', { date: dateWords(by) })
	const words = {
		keep: t('player.keep'),
		modify: t('player.change'),
		'training-only': t('player.trainingOnly'),
		replace: t('player.replace'),
		'stop-wearing': t('player.stopWearing'),
	}
	return words[verdict]
}
/** Pairs to be told of: all, or while sport is held only those that are not worn or need repair. */
export const pairsToTell = ({ gate, owned }: Pick<SettledPlan, 'gate' | 'owned'>): Owned[] =>
	waits(gate, 'sport')
		? owned.filter(({ verdict }) => verdict !== 'keep' && verdict !== 'training-only')
		: [...owned]
/** A row each pair: its name, what to do, and why. */
export function pairRows(reader: Reader, input: ReportInput, t: Speak): string[][] {
	const plan = planOf(input)
	const isBuying = !buyingWaits(plan.gate)
	return pairsToTell(plan).map((pair) => [
		pairName(pair.id, input.visit, t),
		verdictWords(pair, isBuying, t),
		isBuying ? (toldBy(reader, pair) ?? '') : withoutBuying(pair, reader),
	])
}
/** The pairs at hand with their verdicts. */
export const pairs: Section = (input, _notes, t) => {
	const rows = pairRows(readerOf('player', input), input, t)
	if (rows.length === 0) return []
	return [
		heading(t('player.pairs')),
		{
			kind: 'table',
			caption: t('player.pairsCaption'),
			head: [t('player.pair'), t('player.verdict'), t('common.why')],
			rows,
			widths: [110, 100, '*'],
		},
	]
}
/** What to wear until the foot was looked at, and the care of its skin: never held. */
export function untilFootReview(input: ReportInput, t: Speak): Block[] {
	const { gate, owned } = planOf(input)
	if (!awaitsFootReview(gate)) return []
	const worn = owned
		.filter(({ verdict }) => verdict === 'keep')
		.map(({ id }) => pairName(id, input.visit, t))
	return [
		heading(t('player.untilReview')),
		say(
			worn.length > 0
				? t('player.wearUntil', { pairs: capital(worn.join(', ')) })
				: t('player.wearSoft'),
		),
		{ kind: 'list', items: [t('player.skinLook'), t('player.skinFeel'), t('player.skinCall')] },
	]
}
export const wearUntil: Section = (input, _notes, t) => untilFootReview(input, t)
