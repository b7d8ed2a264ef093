/**
 * Why the next pairs are looked for as they are. A reason of which a part gave way, or was taken
 * out, is not told whole: its sentence would ask for what is stayed away from. What is left of it
 * is told behind what is recorded.
 */
import { conditionNames } from '../../conditions/registry.ts'
import type { Kept, PairReason, RolePair } from '../../findings/assessment.ts'
import { soleFeatures, soleRows } from '../../prescription/roles/sole.table.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import type { Feature } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import type { StatementCode } from '../../words/statement.ts'
import { featureInWords } from '../../words/words.ts'
import { speakOf } from '../base.ts'
import type { StandingLine } from '../decided.ts'
import type { ReportInput } from '../inputs.ts'
import { planOf } from '../plan-of.ts'
import { linesFor, type Reader } from '../reader.ts'

type Pair = Kept<RolePair>
type Way = 'seek' | 'avoid'
/** Reasons under the table of the next pairs, most consequential first. */
const mostReasons = 6

const isSole = (feature: Feature): boolean => soleFeatures.includes(feature)
/** Whether a pair has what is asked; a sole is asked by the feature that names it. */
function stands(pair: Pair, way: Way, feature: Feature): boolean {
	if (!isSole(feature)) return pair[way].includes(feature)
	const isItsOwn = pair.sole !== undefined && soleRows[pair.sole].feature === feature
	return way === 'seek' ? isItsOwn : !isItsOwn
}
const ways = ['seek', 'avoid'] as const
const isWhole = (pair: Pair, asked: PairReason): boolean =>
	ways.every((way) => asked[way].every((feature) => stands(pair, way, feature)))
/** What one finding asks of the pairs to be found. */
interface Asked {
	pair: Pair
	asked: PairReason
}
const askedBy = (id: string, pairs: readonly Pair[]): Asked[] =>
	pairs.flatMap((pair) =>
		(pair.reasons ?? [])
			.filter(({ finding }) => finding === id)
			.map((asked) => ({ pair, asked: asked as PairReason })),
	)
/** What is still looked for because of something recorded; none where nothing is. */
function partOf(line: StandingLine, asked: readonly Asked[], t: Speak): StandingLine[] {
	const isOfCondition = (line.finding?.because ?? []).some(({ measure }) =>
		conditionNames.some((name) => name === measure && name !== 'other-condition'),
	)
	const left = new Set(
		asked.flatMap(({ pair, asked: { seek } }) =>
			seek.filter((feature) => !isSole(feature) && stands(pair, 'seek', feature)),
		),
	)
	if (!isOfCondition || left.size === 0) return []
	const features = [...left].map(featureInWords).join('; ')
	const says = t('player.lookForThese', { features })
	return [{ ...line, says }]
}
/** That matches may have a lighter pair than training: where both are bought, and so. */
const ofTwoRoles: ReadonlySet<string | undefined> = new Set<StatementCode>(['footwear.two-roles'])
const isLighterForMatches = (pairs: readonly Pair[]): boolean =>
	pairs.some(({ role, means }) => role === 'training' && means === 'buy') &&
	pairs.some(
		({ role, means, seek, avoid }) =>
			role === 'match' &&
			means === 'buy' &&
			!avoid.includes('low-mass') &&
			!seek.includes('full-length-cushioning'),
	)
/** Of a record that does not tell reasons apart: whether something was taken out. */
const isPartlyTakenOut = ({ assessment }: ReportInput, { pairs }: SettledPlan): boolean =>
	(assessment.prescription?.pairs ?? []).some((proposed) => {
		const now = pairs.find(({ id }) => id === proposed.id)
		return ways.some((way) => now && proposed[way].some((feature) => !now[way].includes(feature)))
	})
/**
 * The findings under the questions about pairs, in the reader's words.
 * @param pairs those of which something is looked for
 */
export function reasonsForPairs(
	reader: Reader,
	input: ReportInput,
	pairs: readonly Pair[],
): StandingLine[] {
	const plan = planOf(input)
	if (pairs.length === 0) return []
	const areTold = plan.pairs.some(({ reasons }) => reasons !== undefined)
	if (!areTold && isPartlyTakenOut(input, plan)) return []
	const t = speakOf(input.clinic)
	const ids = new Set(
		plan.questions.flatMap(({ id, because }) => (id.startsWith('pair.') ? because : [])),
	)
	return linesFor(reader, input)
		.filter(({ id }) => ids.has(id))
		.flatMap((line) => {
			if (!line.typed && ofTwoRoles.has(line.finding?.code) && !isLighterForMatches(pairs))
				return []
			// the clinician's own words, and what asks nothing of a pair, stand as they are
			if (line.typed || askedBy(line.id, plan.pairs).length === 0) return [line]
			const asked = askedBy(line.id, pairs)
			if (asked.some((one) => isWhole(one.pair, one.asked))) return [line]
			return partOf(line, asked, t)
		})
		.slice(0, mostReasons)
}
