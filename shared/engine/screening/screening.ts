/**
 * The screening room: stop-and-refer questions, Ottawa rules and clot score, to one action. A
 * negative screen never clears.
 */
import { isMinor } from '../facts/age.ts'
import {
	type Action,
	actions,
	type ScreeningItem,
	type ScreeningResult,
} from '../findings/assessment.ts'
import type { Finding, Level } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears, decimalAgeYears } from '../visit/age.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { clotConclusions } from './clot.ts'
import {
	type Conclusions,
	type Screened,
	type StatedItem,
	screeningFinding,
} from './conclusions.ts'
import { diabeticFootConclusions } from './diabetic-foot.ts'
import { answeredYes, conditionConclusions, generalConclusions } from './general.ts'
import { hipConclusions } from './hip.ts'
import { injuryConclusions } from './injury.ts'
import { medicineConclusions } from './medicines.ts'
import { signConclusions } from './signs/signs.ts'

/**
 * @returns every question with its state, and the highest action; a question not asked stays
 * 'not-asked'
 */
export function screening(visit: Visit, protocol: Protocol): ScreeningResult {
	const screened = screenedOf(visit, protocol)
	const injury = injuryConclusions(screened)
	const diabetes = diabeticFootConclusions(screened)
	const clot = clotConclusions(screened)
	const groups: Conclusions[] = [
		generalConclusions(screened),
		conditionConclusions(screened),
		injury,
		signConclusions(screened),
		hipConclusions(screened),
		diabetes,
		clot,
		medicineConclusions(screened),
	]
	const items = groups.flatMap((group) => group.items)
	const because = Object.assign({}, ...groups.map((group) => group.because)) as Reasons
	const action = items.reduce<Action>((highest, item) => worse(highest, item.action), 'proceed')
	const blockedBy = perSide((side) => blockersOf(items, side))
	return present({
		action,
		items,
		ottawa: injury.ottawa,
		blockedSides: bothSides.filter((side) => blockedBy[side].length > 0),
		blockedBy,
		findings: [
			...groups.flatMap((group) => group.findings),
			...referralFindings(items, because),
			...(action === 'proceed' ? [nothingRecorded(items)] : []),
		],
		diabeticFoot: diabetes.diabeticFoot,
		wells: clot.wells,
	})
}

type Reasons = NonNullable<Conclusions['because']>
function screenedOf(visit: Visit, protocol: Protocol): Screened {
	const { birthDate } = visit.player
	const years = ageYears(birthDate, visit.visitDate)
	return {
		visit,
		answers: visit.screening ?? {},
		minor: isMinor(visit, protocol),
		ageYears: years,
		decimalAgeYears: decimalAgeYears(birthDate, visit.visitDate),
		protocol,
	}
}
const worse = (action: Action, other: Action): Action =>
	actions.indexOf(action) >= actions.indexOf(other) ? action : other
function levelOf(action: Action): Level {
	if (action === 'proceed') return 'note'
	return action === 'letter' ? 'caution' : 'stop'
}
/**
 * Items above a letter that concern this limb: its insert and rotation wait until what was done is
 * recorded.
 */
function blockersOf(items: readonly ScreeningItem[], side: Side): string[] {
	return items
		.filter(
			(item) =>
				actions.indexOf(item.action) > actions.indexOf('letter') &&
				(item.side === side || item.side === 'both' || item.side === 'none'),
		)
		.map((item) => item.id)
}
/** Whatever asks for somebody else is said as a finding too. */
const referralFindings = (items: readonly StatedItem[], because: Reasons): Finding[] =>
	items
		.filter((item) => item.action !== 'proceed')
		.map(({ id, side, action, code, params, says, basis }) =>
			screeningFinding(
				{ code, params, says },
				{ side, level: levelOf(action), because: because[id] ?? answeredYes, basis, id },
			),
		)
/** A screen without a sign is said with what was not asked, and never as a clearance. */
function nothingRecorded(items: readonly ScreeningItem[]): Finding {
	const unasked = items.filter((item) => item.state === 'not-asked').length
	return screeningFinding(state('screening.nothing-recorded', { unasked }), {
		side: 'none',
		level: 'note',
		because: [{ measure: 'questionsNotAsked', value: unasked }],
		basis: { rule: 'negative screen', ...commonPractice },
	})
}
