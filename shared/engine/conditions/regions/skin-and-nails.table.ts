import type { ConditionRow } from '../row.ts'

export const skinAndNails = {
	'ingrown-toenail': { sides: 'each', opens: ['screening.spreadingInfection', 'screening.infection'] },
	'subungual-haematoma': { sides: 'each' },
	blister: { sides: 'each', opens: ['screening.spreadingInfection', 'screening.infection'] },
	'previous-foot-ulcer': { sides: 'each', opens: ['screening.activeFootUlcer', 'screening.diabeticFoot', 'screening.neurological', 'screening.vascular'] },
} as const satisfies Record<string, ConditionRow>
