/** Low energy availability: signs that can go with it; no score is made. */
import { allOf, anyOf, atLeast } from '../answers.ts'
import { type SignRow, signOfPerson } from './sign-row.ts'

export const lowEnergySigns: readonly SignRow[] = [
	signOfPerson('lowEnergy', {
		id: 'low-energy',
		holds: (answers, { ageYears, protocol }) =>
			anyOf(
				atLeast(answers.periodsMissed, protocol.value('screening.periodsMissed')),
				allOf(ageYears >= protocol.value('screening.menarcheYears'), answers.periodsNotBegun),
				atLeast(answers.highRiskBoneStress, protocol.value('screening.redsHighRiskBoneStress')),
				atLeast(answers.otherBoneStress, protocol.value('screening.redsOtherBoneStress')),
				atLeast(answers.monthsLostToBoneStress, protocol.value('screening.redsMonthsLost')),
				answers.offGrowthCurve,
			),
		action: 'letter',
		says:
			'Signs that can go with low energy availability: write to the sports physician. No ' +
			'score is made here.',
		notMet:
			'No listed sign of low energy availability. It can be there without them: ask again ' +
			'each season.',
		ground: { source: 'IOC REDs CAT2 2023, Br J Sports Med', strength: 'expert' },
	}),
]
