/** What an injured ankle or foot leads to: the Ottawa rules in words, and what lies beside them. */
import type { OttawaState, ScreeningItem, ScreeningResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { OttawaPart as Part } from '../words/en/screening/injury.ts'
import { type Statement, state } from '../words/statement.ts'
import {
	type Conclusions,
	itemOf,
	type Screened,
	type StatedItem,
	screeningFinding,
} from './conclusions.ts'
import { type OttawaResult, ottawa, probabilityAfter } from './ottawa.ts'
import { isPregnant } from './pregnancy.ts'

const parts: readonly Part[] = ['ankle', 'foot']
interface InjuryReading {
	side: Side
	reading: OttawaResult
	basis: Basis
	screened: Screened
}

/** Nothing where no injury was recorded. */
export function injuryConclusions(
	screened: Screened,
): Conclusions & Pick<ScreeningResult, 'ottawa'> {
	const { answers, ageYears, protocol } = screened
	if (!answers.injury) return { items: [], findings: [], ottawa: {} }
	const { side } = answers.injury
	const whose = {
		ageYears,
		reducedSensation: answers.reducedSensation,
		pregnant: isPregnant(answers),
	}
	const injury: InjuryReading = {
		side,
		reading: ottawa(answers.injury, whose, protocol),
		basis: protocol.basis('Ottawa ankle and foot rules', 'screening.ottawaMaxDays'),
		screened,
	}
	const { ankle, foot } = injury.reading
	return {
		items: [...parts.map((part) => ottawaItem(part, injury)), ...newlyUnable(injury)],
		findings: [
			...parts.flatMap((part) => ottawaFindings(part, injury)),
			...tenderWithoutPain(injury),
		],
		ottawa: { [side]: { ankle, foot } },
	}
}

const againOf = ({ protocol }: Screened) => ({
	fromDays: protocol.value('screening.ottawaAgainFromDays'),
	toDays: protocol.value('screening.ottawaAgainToDays'),
})
type Outcome = Pick<ScreeningItem, 'state' | 'action'> & { statement: Statement }
/** What the rule for a part comes to, and what it then asks for. */
function outcomeOf(part: Part, { side, reading, screened }: InjuryReading): Outcome {
	const { protocol } = screened
	const bars = () => ({
		side,
		part,
		because: reading.notApplicableBecause,
		minYears: protocol.value('screening.ottawaMinYears'),
		maxDays: protocol.value('screening.ottawaMaxDays'),
	})
	const outcomes: Record<OttawaState, () => Outcome> = {
		met: () => ({
			state: 'yes',
			action: 'same-day',
			statement: state('screening.ottawa-met', { side, part }),
		}),
		'not-applicable': () =>
			reading.quiet
				? {
						state: 'no',
						action: 'proceed',
						statement: state('screening.ottawa-quiet', bars()),
					}
				: {
						state: 'yes',
						action: 'same-day',
						statement: state('screening.ottawa-not-applicable', bars()),
					},
		incomplete: () => ({
			state: 'not-asked',
			action: 'proceed',
			statement: state('screening.ottawa-incomplete', { side, part }),
		}),
		'not-met': () => ({
			state: 'no',
			action: 'proceed',
			statement: state('screening.ottawa-not-met', { side, part, ...againOf(screened) }),
		}),
	}
	return outcomes[reading[part]]()
}
function ottawaItem(part: Part, injury: InjuryReading): StatedItem {
	const { statement, ...outcome } = outcomeOf(part, injury)
	const { side, basis } = injury
	return itemOf(statement, { ...outcome, side, basis, id: `screening.ottawa-${part}.${side}` })
}
function ottawaFindings(part: Part, injury: InjuryReading): Finding[] {
	const { side, reading, basis } = injury
	const outcome = reading[part]
	if (outcome === 'incomplete')
		return [
			screeningFinding(state('screening.ottawa-incomplete', { side, part }), {
				side,
				level: 'caution',
				basis,
				id: `screening.ottawa-${part}-incomplete.${side}`,
			}),
		]
	if (outcome === 'not-met')
		return [
			screeningFinding(notMet(part, injury), {
				side,
				level: 'note',
				basis,
				id: `screening.ottawa-${part}-not-met.${side}`,
			}),
		]
	return []
}
/**
 * How far a negative Ottawa rule can be trusted; the published figures disagree, and both are
 * shown.
 */
function notMet(part: Part, { side, screened }: InjuryReading): Statement {
	const { minor, protocol } = screened
	const said = { side, part, ...againOf(screened) }
	if (minor)
		return state('screening.ottawa-not-met-minor', {
			...said,
			found: protocol.value('screening.ottawaSensitivityYoung'),
		})
	const left = probabilityAfter(
		protocol.value('screening.ottawaPrevalence'),
		protocol.value('screening.ottawaLrMinus'),
	)
	return state('screening.ottawa-not-met-adult', {
		...said,
		left: rounded(left * 100, 1),
		found: protocol.value('screening.ottawaSensitivityAdult'),
	})
}
function newlyUnable({ side, reading, basis }: InjuryReading): StatedItem[] {
	const { ankle, foot } = reading
	const ruleAsks = ankle === 'met' || foot === 'met' || ankle === 'not-applicable'
	if (!reading.newlyUnable || ruleAsks) return []
	return [
		itemOf(state('screening.newly-unable', { side }), {
			side,
			state: 'yes',
			action: 'imaging',
			basis,
		}),
	]
}
function tenderWithoutPain({ side, reading, basis }: InjuryReading): Finding[] {
	if (!reading.tenderWithoutPain) return []
	return [
		screeningFinding(state('screening.tender-without-pain', { side }), {
			side,
			level: 'caution',
			basis,
		}),
	]
}
