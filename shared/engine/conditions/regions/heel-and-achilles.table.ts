import type { ConditionRow } from '../row.ts'

export const heelAndAchilles = {
	'achilles-insertional': { sides: 'each', exercises: ['calf-loading-from-floor'], opens: ['screening.achillesRuptureSuspected', 'screening.achilles', 'screening.morningStiffness', 'screening.inflammatory'] },
	'achilles-midportion': { sides: 'each', exercises: ['calf-loading'], opens: ['screening.achillesRuptureSuspected', 'screening.achilles'] },
	'haglund-deformity': { sides: 'each' },
	'calcaneal-apophysitis': {
		sides: 'each',
		ages: { fromYears: 7, toYears: 15, population: 'children; football academies', source: 'Belikan et al. 2022, J Orthop Surg Res, doi 10.1186/s13018-022-02979-9 (growth plate appears at 7 to 9, typical 8 to 15)', strength: 'cohort', surety: 'read' },
		opens: ['screening.nightPain', 'screening.limpUnexplained', 'screening.limp'],
	},
	'plantar-heel-pain': { sides: 'each', exercises: ['calf-loading', 'foot-muscles'], opens: ['screening.morningStiffness', 'screening.inflammatory', 'screening.boneStressLowRisk', 'screening.boneStress'] },
	'heel-fat-pad-pain': { sides: 'each' },
} as const satisfies Record<string, ConditionRow>
