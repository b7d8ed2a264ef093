/** The pairs at hand: what to do with each, and why. */
import type { Kept, OwnedPair } from '../../findings/assessment.ts'
import type { Fit } from '../../onfoot/fit.ts'
import { pairsLeftOff } from '../../prescription/owned.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import type { Speak } from '../../words/speak.ts'
import type { StatementCode } from '../../words/statement.ts'
import { capital, dateWords } from '../../words/words.ts'
import { heading, type Section } from '../base.ts'
import { fitIn, staysOff } from '../fit.ts'
import type { ReportInput } from '../inputs.ts'
import { mostPairs } from '../page-one/most-pairs.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'

type Owned = Kept<OwnedPair>
/** The verdict itself: it stands in a column of its own, as it was settled. */
const verdictCodes: ReadonlySet<string> = new Set<StatementCode>([
	'owned.keep',
	'owned.training-only',
	'owned.modify',
	'owned.replace',
	'owned.stop-wearing',
])
interface Part {
	code: string
	params?: Readonly<Record<string, unknown>>
}
const partsOf = ({ said }: NonNullable<Owned['params']> = {}): readonly Part[] | undefined =>
	Array.isArray(said) ? (said as readonly Part[]) : undefined
/** The length is right: no reason for anything but to keep the pair. */
const fits: ReadonlySet<string> = new Set<StatementCode>(['owned.room', 'owned.room-near'])
/** How a new pair is broken in: of training and of matches. */
const ofPlay: ReadonlySet<string> = new Set<StatementCode>(['pairs.not-broken-in'])
/** When it will be too short: what is said first of a pair that is kept. */
const outgrownBy: StatementCode = 'pairs.outgrown-by'
const untilOf = (said: readonly Part[]): string | undefined => {
	const on = said.find(({ code }) => code === outgrownBy)?.params?.on
	return typeof on === 'string' ? on : undefined
}
const told = (pair: Owned, said: readonly Part[], reader: Reader): string =>
	said.length === 0 ? '' : (toldBy(reader, { ...pair, params: { ...pair.params, said } }) ?? '')
/**
 * Why, without the verdict, and without matches while those wait: the worst first, of a pair that is
 * kept until when. What an older record says stands whole.
 */
function reasonsOf(pair: Owned, reader: Reader, gate: SettledPlan['gate'], t: Speak) {
	const noPlay = waits(gate, 'match') || waits(gate, 'impact')
	const said = partsOf(pair.params)?.filter(
		({ code }) => !verdictCodes.has(code) && !(noPlay && ofPlay.has(code)),
	)
	if (!said)
		return { first: toldBy(reader, pair) ?? '', rest: '', whole: toldBy(reader, pair) ?? '' }
	const whole = told(pair, said, reader)
	const until = pair.verdict === 'keep' ? untilOf(said) : undefined
	if (until !== undefined)
		return { first: t('pageOne.untilAbout', { date: dateWords(until) }), rest: whole, whole }
	const read = said.filter((part) => told(pair, [part], reader) !== '')
	const first = read.find(({ code }) => pair.verdict === 'keep' || !fits.has(code)) ?? read[0]
	return {
		first: first ? told(pair, [first], reader) : '',
		rest: told(
			pair,
			said.filter((part) => part !== first),
			reader,
		),
		whole,
	}
}
/** What to do with a new pair; of one for training alone or to be mended the verdict says more. */
function fitWords(pair: Owned, fit: Fit | undefined, t: Speak): string | undefined {
	if (fit === undefined) return undefined
	const saysMore = pair.verdict === 'training-only' || pairsLeftOff([pair]).length > 0
	return saysMore && !staysOff(fit) ? undefined : t(`player.fit.${fit}`)
}
/** What to do with a pair. One to be replaced is left off while nothing may be bought. */
function verdictWords(pair: Owned, isBuying: boolean, fit: Fit | undefined, t: Speak): string {
	const { verdict, by } = pair
	const ofNew = fitWords(pair, fit, t)
	if (ofNew !== undefined) return ofNew
	if (verdict === 'stop-wearing' || (verdict === 'replace' && !isBuying))
		return t('player.stopWearing')
	if (pairsLeftOff([pair]).length > 0) return t('player.mendFirst')
	if (verdict === 'replace')
		return by === undefined ? t('player.replace') : t('player.replaceBy', { date: dateWords(by) })
	const words = {
		keep: t('player.keep'),
		modify: t('player.change'),
		'training-only': t('player.trainingOnly'),
	}
	return words[verdict]
}
/** Pairs to be told of: all, or while sport is held only those that are not worn or need repair. */
const pairsToTell = ({ gate, owned }: Pick<SettledPlan, 'gate' | 'owned'>): Owned[] =>
	waits(gate, 'sport')
		? owned.filter(({ verdict }) => verdict !== 'keep' && verdict !== 'training-only')
		: [...owned]
/** Danger first; what may stay comes last. */
const order: readonly Owned['verdict'][] = [
	'stop-wearing',
	'modify',
	'replace',
	'training-only',
	'keep',
]
/** A pair in words: its name, what to do, why in one reason, what else there is to it. */
export interface PairRow {
	verdict: string
	name: string
	first: string
	rest: string
	whole: string
}
/**
 * A row each pair, those first with which something is to be done.
 * @param isTold which pairs; all unless given
 */
export function pairRows(
	reader: Reader,
	input: ReportInput,
	t: Speak,
	isTold: (pair: Owned) => boolean = () => true,
): PairRow[] {
	const plan = planOf(input)
	const isBuying = !buyingWaits(plan.gate)
	const leftOff = pairsLeftOff(plan.owned)
	const place = ({ id, verdict }: Owned) =>
		order.indexOf(leftOff.includes(id) ? 'stop-wearing' : verdict)
	return pairsToTell(plan)
		.filter(isTold)
		.toSorted((one, other) => place(one) - place(other))
		.map((pair) => ({
			name: pairName(pair.id, input.visit, t),
			verdict: verdictWords(pair, isBuying, fitIn(pair, input.visit, plan), t),
			...reasonsOf(pair, reader, plan.gate, t),
		}))
}
/** What page one has no room for: more reasons, and pairs beyond its table. */
export const pairs: Section = (input, _notes, t) => {
	const rows = pairRows(readerOf('player', input), input, t)
	const isOnPageOne = !waits(planOf(input).gate, 'sport')
	const shown = isOnPageOne ? mostPairs : 0
	const items = rows.flatMap(({ name, verdict, rest, whole }, place) => {
		if (place >= shown) return [[t('guardian.pair', { name: capital(name), verdict }), whole]]
		return rest === '' ? [] : [[t('pageOne.morePair', { name: capital(name) }), rest]]
	})
	if (items.length === 0) return []
	return [
		heading(t('player.pairs')),
		{ kind: 'list', items: items.map((words) => words.filter(Boolean).join(' ')) },
	]
}
