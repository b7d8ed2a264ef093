import type { ConditionRow } from '../row.ts'

export const legAndKnee = {
	'calf-strain': { sides: 'each', opens: ['screening.calfSuspicion', 'screening.achillesRuptureSuspected', 'screening.achilles'] },
	'shin-pain': { sides: 'each', opens: ['screening.boneStressLowRisk', 'screening.boneStress', 'screening.exertionalTightness', 'screening.vascular'] },
	'tibial-tubercle-apophysitis': {
		sides: 'each',
		ages: { fromYears: 8, toYears: 15, population: 'children (boys 12 to 15, girls 8 to 12)', source: 'question-and-answer page of low quality (read second-hand)', strength: 'expert', surety: 'read-secondary' },
		exercises: ['load-ladder', 'knee-loading'],
		opens: ['screening.nightPain', 'screening.limpUnexplained', 'screening.limp'],
	},
	'patellofemoral-pain': { sides: 'each', exercises: ['hip-and-knee-strength'] },
	'patellar-tendinopathy': { sides: 'each', exercises: ['knee-loading'] },
	'acl-history': { sides: 'each' },
	'knee-osteoarthritis': {
		sides: 'each',
		ages: { fromYears: 18, population: 'all players', source: 'common practice, no source', strength: 'practice', surety: 'common practice' },
		exercises: ['hip-and-knee-strength'],
		opens: ['screening.hotSwollenJoint', 'screening.morningStiffness', 'screening.inflammatory'],
	},
} as const satisfies Record<string, ConditionRow>
