/** What an injured ankle or foot leads to: the Ottawa rules in words, and what lies beside them. */
import type { OttawaState, ScreeningItem, ScreeningResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type Conclusions, type Screened, screeningFinding } from './conclusions.ts'
import { type OttawaResult, ottawa, probabilityAfter } from './ottawa.ts'

const parts = ['ankle', 'foot'] as const
type Part = (typeof parts)[number]
interface InjuryReading {
	side: Side
	reading: OttawaResult
	basis: Basis
}

/** Nothing where no injury was recorded. */
export function injuryConclusions(
	screened: Screened,
): Conclusions & Pick<ScreeningResult, 'ottawa'> {
	const { answers, ageYears, protocol } = screened
	if (!answers.injury) return { items: [], findings: [], ottawa: {} }
	const { side } = answers.injury
	const injury: InjuryReading = {
		side,
		reading: ottawa(answers.injury, ageYears, answers.reducedSensation, protocol),
		basis: protocol.basis('Ottawa ankle and foot rules', 'screening.ottawaMaxDays'),
	}
	const { ankle, foot } = injury.reading
	return {
		items: [...parts.map((part) => ottawaItem(part, injury)), ...newlyUnable(injury)],
		findings: [
			...parts.flatMap((part) => ottawaFindings(part, injury, screened)),
			...tenderWithoutPain(injury),
		],
		ottawa: { [side]: { ankle, foot } },
	}
}

function ottawaItem(part: Part, { side, reading, basis }: InjuryReading): ScreeningItem {
	const outcomes: Record<OttawaState, Pick<ScreeningItem, 'state' | 'action' | 'says'>> = {
		met: {
			state: 'yes',
			action: 'same-day',
			says: `Ottawa ${part} rule met: X-ray of the ${side} ${part} the same day.`,
		},
		'not-applicable': {
			state: 'not-asked',
			action: reading.quiet ? 'proceed' : 'same-day',
			says:
				`The Ottawa ${part} rule cannot be used ` +
				`(${reading.notApplicableBecause.join(', ')}): have the injury seen the same day.`,
		},
		incomplete: {
			state: 'not-asked',
			action: 'proceed',
			says: `Ottawa ${part} rule incomplete: ask the missing questions.`,
		},
		'not-met': {
			state: 'no',
			action: 'proceed',
			says:
				`Ottawa ${part} rule not met. This does not say that nothing is broken: look ` +
				'again in 5 to 7 days.',
		},
	}
	return { id: `screening.ottawa-${part}.${side}`, side, ...outcomes[reading[part]], basis }
}
function ottawaFindings(
	part: Part,
	{ side, reading, basis }: InjuryReading,
	screened: Screened,
): Finding[] {
	if (reading[part] === 'incomplete')
		return [
			screeningFinding({
				id: `screening.ottawa-${part}-incomplete.${side}`,
				side,
				level: 'caution',
				says:
					`The Ottawa ${part} rule is incomplete for the ${side} side: a question is open, and ` +
					'an open question never counts as no. Complete it before going on.',
				basis,
			}),
		]
	if (reading[part] === 'not-met')
		return [
			screeningFinding({
				id: `screening.ottawa-${part}-not-met.${side}`,
				side,
				level: 'note',
				says:
					`Ottawa ${part} rule not met on the ${side} side. This does not say that nothing is ` +
					`broken: look again in 5 to 7 days. ${accuracyWords(screened)}`,
				basis,
			}),
		]
	return []
}
/**
 * How far a negative Ottawa rule can be trusted; the published figures disagree, and both are
 * shown.
 */
function accuracyWords({ minor, protocol }: Screened): string {
	if (minor)
		return (
			'In children and adolescents the rule found ' +
			`${protocol.value('screening.ottawaSensitivityYoung')} of 100 fractures (Dowling ` +
			'2009).'
		)
	const left =
		probabilityAfter(
			protocol.value('screening.ottawaPrevalence'),
			protocol.value('screening.ottawaLrMinus'),
		) * 100
	return (
		`An older review leaves about ${rounded(left, 1)} fractures in 100 such players ` +
		'(Bachmann 2003); a review of 2022 found that the rule catches ' +
		`${protocol.value('screening.ottawaSensitivityAdult')} of 100 in adults.`
	)
}
function newlyUnable({ side, reading, basis }: InjuryReading): ScreeningItem[] {
	const { ankle, foot } = reading
	const ruleAsks = ankle === 'met' || foot === 'met' || ankle === 'not-applicable'
	if (!reading.newlyUnable || ruleAsks) return []
	return [
		{
			id: `screening.newly-unable.${side}`,
			side,
			state: 'yes',
			action: 'imaging',
			says:
				`Cannot take four steps now on the ${side} side: urgent imaging, although the ` +
				'Ottawa rule as answered does not ask for it.',
			basis,
		},
	]
}
function tenderWithoutPain({ side, reading, basis }: InjuryReading): Finding[] {
	if (!reading.tenderWithoutPain) return []
	return [
		screeningFinding({
			id: `screening.tender-without-pain.${side}`,
			side,
			level: 'caution',
			says:
				`Bone tenderness on the ${side} side without pain recorded in that zone: the rule says ` +
				'no film, your judgement decides.',
			basis,
		}),
	]
}
