/** The pairs of the plan: those owned with their verdict, and what to look for in each role. */
import type { Kept, OwnedPair, RolePair } from '../../findings/assessment.ts'
import type { Fit } from '../../onfoot/fit.ts'
import { type Feature, termWords } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { type ParamsOf, type StatementCode, state } from '../../words/statement.ts'
import { capital, dateWords, shown } from '../../words/words.ts'
import { heading, type Section, small } from '../base.ts'
import { fitIn } from '../fit.ts'
import type { ReportInput } from '../inputs.ts'
import { modelWords } from '../marked.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { buyingWaits } from '../waits.ts'

/** Rows that one page holds. */
const mostRows = 6
/** Danger first; what may stay is the first to have no room. */
const order: readonly OwnedPair['verdict'][] = [
	'stop-wearing',
	'modify',
	'replace',
	'training-only',
	'keep',
]
const verdictCodes: ReadonlySet<string> = new Set<StatementCode>([
	'owned.keep',
	'owned.training-only',
	'owned.modify',
	'owned.replace',
	'owned.stop-wearing',
])
type Said = ParamsOf<'owned.pair'>['said']
/** How long a pair lasts is told without what body mass has to do with it, which is private. */
const unweighed = (part: Said[number]): Said[number] =>
	'lifeShare' in (part.params ?? {}) ? { ...part, params: { ...part.params, lifeShare: 1 } } : part
/** Why, without the verdict, which stands in a column of its own. */
function whyOf({ code, params, says }: Kept<OwnedPair>): string {
	const said = params?.said
	if (code !== 'owned.pair' || !Array.isArray(said)) return says
	const reasons = (said as Said).filter((part) => !verdictCodes.has(part.code))
	return state('owned.pair', { said: reasons.map(unweighed) }).says
}
/** As the player reads it: a pair to be replaced is left off while nothing may be bought. */
function verdictOf(
	{ verdict, by }: Kept<OwnedPair>,
	isBuying: boolean,
	fit: Fit | undefined,
	t: Speak,
): string {
	if (fit !== undefined && verdict !== 'training-only') return t(`sheet.fit.${fit}`)
	if (verdict === 'replace' && !isBuying) return t('sheet.verdict.replace-later')
	return by === undefined
		? t(`sheet.verdict.${verdict}`)
		: `${t(`sheet.verdict.${verdict}`)} ${t('player.whenBy', { date: dateWords(by) })}`
}
export const owned: Section = (input, _notes, t) => {
	const plan = planOf(input)
	const { owned: pairs, gate } = plan
	if (pairs.length === 0) return []
	const rows = pairs
		.toSorted((one, other) => order.indexOf(one.verdict) - order.indexOf(other.verdict))
		.map((pair) => [
			pairName(pair.id, input.visit, t),
			verdictOf(pair, !buyingWaits(gate), fitIn(pair, input.visit, plan), t),
			whyOf(pair),
		])
	return [
		heading(t('sheet.owned')),
		{
			kind: 'table',
			caption: t('player.pairsCaption'),
			head: [t('player.pair'), t('sheet.verdict'), t('common.why')],
			rows: rows.slice(0, mostRows),
			widths: [92, 92, '*'],
		},
		...beyond(rows.length - mostRows, t),
	]
}
const beyond = (count: number, t: Speak) =>
	count > 0 ? [small(capital(t('referral.more', { count })))] : []
const features = (list: readonly Feature[]): string => list.map((one) => termWords(one)).join(', ')
function meansOf(pair: Kept<RolePair>, input: ReportInput, t: Speak): string {
	const models = pair.shelf.flatMap((id) => {
		const model = input.assessment.footwear.ranked.find((one) => one.id === id)
		return model ? [modelWords(model)] : []
	})
	return [
		t(`sheet.means.${pair.means}`),
		...(pair.ownedPair === undefined ? [] : [pairName(pair.ownedPair, input.visit, t)]),
		...models,
	].join(': ')
}
/** What is asked of a pair, in one line. */
function askedOf(pair: Kept<RolePair>, input: ReportInput, t: Speak): string {
	const { sole, surfaces, insideLengthMm: inside, seek, avoid } = pair
	const grounds = surfaces.map((surface) => termWords(surface)).join(', ')
	return [
		meansOf(pair, input, t),
		[sole ? termWords(sole) : '', grounds && `(${grounds})`].filter(Boolean).join(' '),
		inside && t('player.inside', { min: shown(inside.min), max: shown(inside.max) }),
		seek.length > 0 && t('sheet.seek', { features: features(seek) }),
		avoid.length > 0 && t('sheet.avoid', { features: features(avoid) }),
	]
		.filter(Boolean)
		.join('; ')
}
/** Roles of which the same is asked stand together. */
export const byRole: Section = (input, _notes, t) => {
	const { gate, pairs } = planOf(input)
	if (buyingWaits(gate) || pairs.length === 0) return []
	const alike = Map.groupBy(pairs, (pair) => askedOf(pair, input, t))
	const rows = [...alike].map(([text, group]) => ({
		label: capital([...new Set(group.map(({ role }) => t(`role.${role}`)))].join(', ')),
		text: capital(text),
	}))
	return [{ kind: 'facts', title: t('sheet.byRole'), rows }]
}
