import type { ConditionRow } from '../row.ts'

export const midfootAndArch = {
	'navicular-stress-fracture': { sides: 'each', opens: ['screening.boneStressHighRisk', 'screening.boneStress', 'screening.lowEnergy'] },
	'midfoot-sprain': {
		sides: 'each',
		opens: ['screening.lisfrancSuspected', 'screening.lisfranc', 'screening.injury'],
		shoe: { when: 'now', seek: ['torsional-stiffness', 'stiff-forefoot', 'removable-liner'], avoid: ['flexible-forefoot', 'bladed-studs'], source: 'common practice, no source', strength: 'practice' },
		caution: { when: 'now', source: 'J Foot Ankle Res 2023, s13047-023-00608-0 (20 to 40 % missed at first; films without weight miss more)', strength: 'cohort' },
	},
	'flexible-flatfoot-pain': { sides: 'each', exercises: ['foot-muscles', 'heel-rise-strength'], opens: ['screening.rigidFlatFoot'] },
	'cavus-foot-pain': { sides: 'each', opens: ['screening.rigidFlatFoot', 'screening.newWeakness', 'screening.neurological'] },
	'tarsal-coalition': {
		sides: 'each',
		ages: { fromYears: 8, population: 'children and adolescents', source: 'patient pages of orthopaedic services (pain most often begins at 8 to 16 years; read second-hand)', strength: 'expert', surety: 'read-secondary' },
		exercises: ['within-comfort'],
		opens: ['screening.rigidFlatFoot'],
		shoe: { when: 'ever', seek: ['firm-heel-counter', 'torsional-stiffness', 'full-length-cushioning', 'removable-liner'], avoid: ['low-mass', 'bladed-studs'], source: 'common practice, no source', strength: 'practice' },
		caution: { when: 'ever', source: 'Kothari and Masquijo 2020, EFORT Open Rev 5:80-89 (care without an operation often fails); posting common practice, no source', strength: 'expert' },
	},
	'posterior-tibial-tendinopathy': { sides: 'each', exercises: ['heel-rise-strength', 'foot-muscles'] },
} as const satisfies Record<string, ConditionRow>
