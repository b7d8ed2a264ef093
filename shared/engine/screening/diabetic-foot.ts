/** What the risk of a foot in diabetes leads to, foot by foot (NICE NG19). */
import type {
	Action,
	DiabeticRisk,
	ScreeningItem,
	ScreeningResult,
} from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type Conclusions, type Screened, screeningFinding, stateOf } from './conclusions.ts'
import { diabeticRisk } from './diabetic.ts'

const basis: Basis = {
	rule: 'diabetic foot risk',
	source: 'NICE NG19 (reviewed 2023, unchanged)',
	strength: 'guideline',
}
const pathways: Record<DiabeticRisk, { action: Action; says: string }> = {
	low: { action: 'proceed', says: 'low risk: foot check every year' },
	moderate: {
		action: 'letter',
		says:
			'moderate risk: foot protection service within 6 to 8 weeks, then review every 3 to 6 ' +
			'months',
	},
	high: {
		action: 'letter',
		says:
			'high risk: foot protection service within 2 to 4 weeks, then review every 1 to 2 months; ' +
			'no new boot without review and no stud under a place of high pressure',
	},
	active: {
		action: 'same-day',
		says: 'active foot problem: refer within one working day, off the foot meanwhile',
	},
	incomplete: {
		action: 'proceed',
		says: 'risk not established: complete the questions',
	},
}
interface FootReading {
	side: Side
	risk: DiabeticRisk
	complete: boolean
	action: Action
	says: string
}

type FootConclusions = Conclusions & { diabeticFoot: ScreeningResult['diabeticFoot'] }

/** Nothing where the questions on diabetes were not opened. */
export function diabeticFootConclusions(screened: Screened): FootConclusions {
	const group = screened.answers.diabeticFoot
	if (!group) return { items: [], findings: [], diabeticFoot: undefined }
	const advice = adviceByAge(screened)
	const readings = bothSides.flatMap((side): FootReading[] => {
		const foot = group[side]
		if (!foot) return []
		const { risk, complete } = diabeticRisk(foot, group.renalReplacement)
		const { action, says } = pathways[risk]
		return [{ side, risk, complete, action, says: `Diabetic foot, ${side}: ${says}.${advice}` }]
	})
	return {
		items: [...readings.map(footItem), ...threatItems(group.limbOrLifeThreat)],
		findings: readings.flatMap(footFindings),
		diabeticFoot: Object.fromEntries(readings.map(({ side, risk }) => [side, risk])),
	}
}
function adviceByAge({ ageYears, minor, protocol }: Screened): string {
	if (ageYears < protocol.value('screening.diabetesAdviceBelowYears'))
		return ' Under 12 years: advice to child and family.'
	return minor ? ' From 12 to 17 years the paediatric team checks the feet every year.' : ''
}
function footItem({ side, risk, action, says }: FootReading): ScreeningItem {
	const calls = action !== 'proceed'
	return {
		id: `screening.diabetic-foot.${side}`,
		side,
		state: stateOf(risk === 'incomplete' ? undefined : calls),
		action,
		says,
		basis,
	}
}
/** A foot that calls for nobody is still said; one that does, where a question is open. */
function footFindings({ side, risk, complete, action, says }: FootReading): Finding[] {
	if (action === 'proceed')
		return [
			screeningFinding({
				id: `screening.diabetic-foot-${risk}.${side}`,
				side,
				level: risk === 'incomplete' ? 'caution' : 'note',
				says,
				basis,
			}),
		]
	if (complete) return []
	return [
		screeningFinding({
			id: `screening.diabetic-foot-open.${side}`,
			side,
			level: 'caution',
			says:
				`Not every question about the ${side} foot was asked: the risk may be higher than ` +
				`${risk}.`,
			basis,
		}),
	]
}
function threatItems(limbOrLifeThreat: boolean | undefined): ScreeningItem[] {
	if (limbOrLifeThreat === undefined) return []
	return [
		{
			id: 'screening.diabetic-threat',
			side: 'none',
			state: stateOf(limbOrLifeThreat),
			action: limbOrLifeThreat ? 'emergency' : 'proceed',
			says: 'Limb or life in danger from a diabetic foot: emergency department now.',
			basis,
		},
	]
}
