/** What the heel, the Achilles tendon and the calf ask of a shoe. */
import { belief, type FootwearRule, practice } from './rule.ts'

export const heelAndCalfRules: readonly FootwearRule[] = [
	{
		id: 'growing-heel',
		ofGrowth: true,
		needs: ['conditions', 'player.birthDate'],
		conditions: ['calcaneal-apophysitis'],
		seek: ['raised-heel', 'full-length-cushioning', 'many-studs'],
		avoid: ['low-heel'],
		basis: {
			source:
				'James et al., Br J Sports Med 2016;50:1268-1275 (heel raise better at 1 to 2 months, ' +
				'no difference later); Rodriguez-Sanz 2018',
			strength: 'trial',
		},
	},
	{
		id: 'achilles-insertional',
		needs: ['conditions'],
		conditions: ['achilles-insertional', 'haglund-deformity'],
		seek: ['raised-heel', 'soft-heel-counter', 'low-heel-collar'],
		avoid: ['firm-heel-counter', 'low-heel'],
		basis: { source: 'NHS leaflet; heights common practice, no source', strength: 'practice' },
	},
	{
		id: 'achilles-midportion',
		needs: ['conditions'],
		conditions: ['achilles-midportion', 'calf-strain'],
		seek: ['raised-heel'],
		avoid: ['low-heel'],
		basis: {
			source: 'Rabusin 2021, Br J Sports Med 55:486 (12 mm lifts, daily shoes, not boots)',
			strength: 'trial',
		},
	},
	{
		id: 'hard-counter',
		needs: ['conditions'],
		conditions: [
			'achilles-insertional',
			'achilles-midportion',
			'haglund-deformity',
			'calcaneal-apophysitis',
		],
		seek: ['soft-heel-counter', 'low-heel-collar'],
		avoid: ['firm-heel-counter'],
		basis: practice,
	},
	{
		id: 'plantar-heel',
		needs: ['conditions'],
		conditions: ['plantar-heel-pain'],
		seek: ['firm-heel-counter', 'torsional-stiffness', 'raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'heel-collar',
		needs: ['conditions'],
		conditions: ['haglund-deformity', 'blister'],
		seek: ['padded-collar'],
		avoid: ['firm-heel-counter'],
		basis: practice,
	},
	{
		id: 'heel-pad',
		needs: ['conditions'],
		conditions: ['heel-fat-pad-pain'],
		seek: ['full-length-cushioning', 'firm-heel-counter', 'many-studs'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'calf-lever',
		needs: ['conditions'],
		conditions: ['achilles-midportion', 'achilles-insertional', 'calf-strain'],
		seek: ['flexible-forefoot'],
		avoid: ['stiff-forefoot'],
		basis: belief,
	},
	{
		id: 'calf-history',
		needs: ['conditions'],
		conditions: ['achilles-midportion', 'calf-strain'],
		when: 'ever',
		seek: [],
		avoid: ['low-heel'],
		basis: practice,
	},
]
