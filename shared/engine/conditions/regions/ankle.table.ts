import type { ConditionRow } from '../row.ts'

export const ankleConditions = {
	'lateral-ankle-instability': { sides: 'each', exercises: ['balance'], opens: ['screening.injury', 'screening.syndesmosisSuspected', 'screening.syndesmosis'] },
	'syndesmosis-sprain': { sides: 'each', opens: ['screening.syndesmosisSuspected', 'screening.syndesmosis', 'screening.injury'] },
	'anterior-ankle-impingement': { sides: 'each', exercises: ['within-comfort'] },
	'posterior-ankle-impingement': { sides: 'each' },
	'peroneal-tendinopathy': { sides: 'each', exercises: ['balance'] },
	'sinus-tarsi-pain': { sides: 'each', exercises: ['balance'] },
	'ankle-osteoarthritis': {
		sides: 'each',
		ages: { fromYears: 18, population: 'all players', source: 'common practice, no source', strength: 'practice', surety: 'common practice' },
		exercises: ['within-comfort', 'balance'],
		opens: ['screening.hotSwollenJoint', 'screening.morningStiffness', 'screening.inflammatory'],
		shoe: { when: 'now', seek: ['stiff-forefoot', 'full-length-cushioning', 'wide-base', 'low-rotational-grip'], avoid: ['bladed-studs', 'long-studs'], source: 'common practice; trial registers NCT03524729 and NL 40032 call the evidence for rocker soles thin', strength: 'practice' },
		caution: { when: 'now', source: 'common practice, no source', strength: 'practice' },
	},
	'foot-or-ankle-surgery': { sides: 'each', asks: ['operation'], opens: ['screening.calfSuspicion', 'screening.wells', 'screening.spreadingInfection', 'screening.infection'] },
} as const satisfies Record<string, ConditionRow>
