/**
 * A foot that may lose its skin unnoticed (NICE NG19: neuropathy, poor blood supply, an ulcer of
 * before), from any entry: a recorded condition, an answer, a test.
 */
import { conditionReasons } from '../conditions/query.ts'
import type { ScreeningResult } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Screening, Side, Visit } from '../visit/visit.ts'

/** What of the screening is read here. */
export type Screened = Pick<ScreeningResult, 'items' | 'diabeticFoot'>
type DiabeticFoot = NonNullable<NonNullable<Screening['diabeticFoot']>[Side]>

const diabeticSigns = [
	'neuropathy',
	'ischaemia',
	'previousUlcer',
	'amputation',
	'ulcer',
	'infection',
	'criticalIschaemia',
	'gangrene',
	'hotRedSwollen',
] as const satisfies readonly (keyof DiabeticFoot)[]
/** Tests of a foot that say so by themselves. */
const footSigns: readonly string[] = ['monofilament', 'pulses', 'pressure-index', 'rest-pain']
/** Questions that name no foot: they count for both. */
const bothFeet = ['activeFootUlcer', 'coldPaleFoot'] as const satisfies readonly (keyof Screening)[]

const yes = (measure: string, side?: Side): Because =>
	side === undefined ? { measure, value: 'yes' } : { measure, side, value: 'yes' }
/** Feeling was tested at all three sites of the foot, and was there. */
function feltEverywhere(screening: Screening | undefined, side: Side): boolean {
	const foot = screening?.neurological?.[side]
	return foot?.feltHallux === true && foot.feltFirstHead === true && foot.feltFifthHead === true
}
/**
 * Why this foot is at risk; empty where nothing says so. Diabetes alone at low risk does not.
 * Feeling that is said to be reduced counts until the monofilament was felt at all three sites (own
 * choice).
 */
export function footAtRisk(visit: Visit, screened: Screened, side: Side): Because[] {
	const { screening } = visit
	const diabetic = screening?.diabeticFoot?.[side]
	const risk = screened.diabeticFoot?.[side]
	const raised = risk === 'moderate' || risk === 'high' || risk === 'active'
	const signs = screened.items.filter(
		(item) =>
			item.state === 'yes' &&
			item.side === side &&
			footSigns.some((sign) => item.id === `screening.${sign}.${side}`),
	)
	return [
		...conditionReasons(visit, ['neuropathy', 'previous-foot-ulcer'], { side, when: 'ever' }),
		...(raised ? [{ measure: 'diabeticFootRisk', side, value: risk }] : []),
		...diabeticSigns.filter((sign) => diabetic?.[sign] === true).map((sign) => yes(sign, side)),
		...signs.map(({ id }) => ({ measure: 'warningSign', side, value: id.split('.')[1] ?? id })),
		...bothFeet.filter((question) => screening?.[question] === true).map((key) => yes(key)),
		...(screening?.reducedSensation === true && !feltEverywhere(screening, side)
			? [yes('reducedSensation')]
			: []),
	]
}
