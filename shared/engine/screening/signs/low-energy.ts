/** Low energy availability: signs that can go with it; no score is made. */
import type { Screening } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { allOf, anyOf, atLeast, type Tri } from '../answers.ts'
import type { Screened } from '../conclusions.ts'
import { type SignRow, signOfPerson } from './sign-row.ts'

type LowEnergy = NonNullable<Screening['lowEnergy']>
/** What the periods by themselves say. */
const ofPeriods = (
	{ periodsMissed, periodsNotBegun }: LowEnergy,
	{ ageYears, protocol }: Pick<Screened, 'ageYears' | 'protocol'>,
): Tri =>
	anyOf(
		atLeast(periodsMissed, protocol.value('screening.periodsMissed')),
		allOf(ageYears >= protocol.value('screening.menarcheYears'), periodsNotBegun),
	)
const periodsAsked = ({ periodsMissed, periodsNotBegun }: LowEnergy): boolean =>
	periodsMissed !== undefined || periodsNotBegun !== undefined

export const lowEnergySigns: readonly SignRow[] = [
	signOfPerson('lowEnergy', 'low-energy', {
		holds: (answers, context) =>
			anyOf(
				ofPeriods(answers, context),
				atLeast(
					answers.highRiskBoneStress,
					context.protocol.value('screening.redsHighRiskBoneStress'),
				),
				atLeast(answers.otherBoneStress, context.protocol.value('screening.redsOtherBoneStress')),
				atLeast(answers.monthsLostToBoneStress, context.protocol.value('screening.redsMonthsLost')),
				answers.offGrowthCurve,
			),
		action: 'letter',
		says: (answers, context) =>
			ofPeriods(answers, context) === true
				? state('screening.low-energy-periods')
				: state('screening.low-energy'),
		notMet: (answers) =>
			periodsAsked(answers)
				? state('screening.low-energy-periods-not-met')
				: state('screening.low-energy-not-met'),
		ground: { source: 'IOC REDs CAT2 2023, Br J Sports Med', strength: 'expert' },
	}),
]
