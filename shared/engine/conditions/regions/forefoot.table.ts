import type { ConditionRow } from '../row.ts'

export const forefoot = {
	'sesamoid-pain': { sides: 'each', opens: ['screening.boneStressHighRisk', 'screening.boneStress'] },
	'first-mtp-osteoarthritis': {
		sides: 'each',
		ages: { fromYears: 18, population: 'all players', source: 'common practice, no source', strength: 'practice', surety: 'common practice' },
		opens: ['screening.hotSwollenJoint', 'screening.morningStiffness', 'screening.inflammatory'],
	},
	'hallux-limitus': { sides: 'each' },
	'turf-toe': { sides: 'each', opens: ['screening.boneStressHighRisk', 'screening.boneStress'] },
	'hallux-valgus': { sides: 'each' },
	bunionette: { sides: 'each' },
	'hammer-toe': { sides: 'each' },
	'interdigital-neuroma': { sides: 'each', opens: ['screening.reducedSensation', 'screening.neurological'] },
	metatarsalgia: { sides: 'each', opens: ['screening.boneStressLowRisk', 'screening.boneStress'] },
	'plantar-plate-injury': {
		sides: 'each',
		exercises: ['toe-taping', 'foot-muscles'],
		opens: ['screening.boneStressHighRisk', 'screening.boneStress', 'screening.morningStiffness', 'screening.inflammatory'],
		shoe: { when: 'now', seek: ['stiff-forefoot', 'many-studs', 'removable-liner'], avoid: ['flexible-forefoot', 'bladed-studs', 'long-studs'], source: 'NHS foot and ankle service page on plantar plate injury (bendy soles load the joint); studs common practice, no source', strength: 'practice' },
		caution: { when: 'now', source: 'common practice, no source', strength: 'practice' },
	},
	'second-metatarsal-stress-fracture': { sides: 'each', opens: ['screening.boneStressHighRisk', 'screening.boneStress', 'screening.lowEnergy'] },
	'fifth-metatarsal-stress-fracture': { sides: 'each', opens: ['screening.boneStressHighRisk', 'screening.boneStress', 'screening.lowEnergy'] },
	'fifth-metatarsal-apophysitis': {
		sides: 'each',
		ages: { fromYears: 8, toYears: 13, population: 'children', source: 'podiatry pages (read second-hand)', strength: 'expert', surety: 'read-secondary' },
		exercises: ['calf-and-peroneal-stretch'],
		opens: ['screening.boneStressHighRisk', 'screening.boneStress', 'screening.injury'],
	},
} as const satisfies Record<string, ConditionRow>
