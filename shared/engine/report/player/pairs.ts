/** The pairs at hand: what to do with each, and why. */
import type { Kept, OwnedPair } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import { pairsLeftOff } from '../../prescription/owned.ts'
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
}
const partsOf = ({ said }: NonNullable<Owned['params']> = {}): readonly Part[] | undefined =>
	Array.isArray(said) ? (said as readonly Part[]) : undefined
/** How a new pair is broken in: of training and of matches. */
const ofPlay: ReadonlySet<string> = new Set<StatementCode>(['pairs.not-broken-in'])
/** Why, without the verdict, and without matches while those wait. */
function reasonOf(pair: Owned, reader: Reader, gate: SettledPlan['gate']): string {
	const noPlay = waits(gate, 'match') || waits(gate, 'impact')
	const said = partsOf(pair.params)?.filter(
		({ code }) => !verdictCodes.has(code) && !(noPlay && ofPlay.has(code)),
	)
	const params = said ? { ...pair.params, said } : pair.params
	return toldBy(reader, present({ ...pair, params })) ?? ''
}
/** What to do with a pair. One to be replaced is left off while nothing may be bought. */
function verdictWords(pair: Owned, isBuying: boolean, t: Speak): string {
	const { verdict, by } = pair
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
/** A row each pair: its name, what to do, and why. @param isTold which pairs; all unless given */
export function pairRows(
	reader: Reader,
	input: ReportInput,
	t: Speak,
	isTold: (pair: Owned) => boolean = () => true,
): string[][] {
	const plan = planOf(input)
	const isBuying = !buyingWaits(plan.gate)
	return pairsToTell(plan)
		.filter(isTold)
		.map((pair) => [
			pairName(pair.id, input.visit, t),
			verdictWords(pair, isBuying, t),
			reasonOf(pair, reader, plan.gate),
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
		{
			kind: 'list',
			items: [
				t('player.noNewYet'),
				t('player.skinLook'),
				t('player.skinFeel'),
				t('player.skinCall'),
			],
		},
	]
}
export const wearUntil: Section = (input, _notes, t) => untilFootReview(input, t)
