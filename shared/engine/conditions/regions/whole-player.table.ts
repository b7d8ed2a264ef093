import type { ConditionRow } from '../row.ts'

export const wholePlayer = {
	diabetes: { sides: 'person', opens: ['screening.activeFootUlcer', 'screening.diabeticFoot', 'screening.neurological', 'screening.vascular'] },
	neuropathy: { sides: 'any', opens: ['screening.reducedSensation', 'screening.newWeakness', 'screening.neurological'] },
	hypermobility: { sides: 'person', exercises: ['balance'] },
	'leg-length-difference': { sides: 'any', opens: ['screening.suddenLegLengthDifference'] },
	'other-condition': { sides: 'any', asks: ['own-words'] },
} as const satisfies Record<string, ConditionRow>
