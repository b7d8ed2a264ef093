/** What the heel, the Achilles tendon and the calf ask of a shoe. */
import { belief, type FootwearRule, practice } from './rule.ts'

export const heelAndCalfRules: readonly FootwearRule[] = [
	{
		id: 'growing-heel',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('calcaneal-apophysitis'),
		says:
			'Growing heel: raise the heel in both shoes, cushioned heel and many low studs; keep off ' +
			'hard ground in studs.',
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
		when: (facts) => facts.nowAnywhere('achilles-insertional', 'haglund-deformity'),
		says: 'Back of the heel: a raised heel and a soft or low counter take pressure off the tendon.',
		seek: ['raised-heel', 'soft-heel-counter', 'low-heel-collar'],
		avoid: ['firm-heel-counter', 'low-heel'],
		basis: { source: 'NHS leaflet; heights common practice, no source', strength: 'practice' },
	},
	{
		id: 'achilles-midportion',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('achilles-midportion', 'calf-strain'),
		says: 'Achilles or calf: a raised heel lowers the demand.',
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
		when: (facts) =>
			facts.nowAnywhere(
				'achilles-insertional',
				'achilles-midportion',
				'haglund-deformity',
				'calcaneal-apophysitis',
			),
		says:
			'Sore tendon or growing heel: a stiff, hard counter irritates the back of the heel. A soft ' +
			'or low counter and collar.',
		seek: ['soft-heel-counter', 'low-heel-collar'],
		avoid: ['firm-heel-counter'],
		basis: practice,
	},
	{
		id: 'plantar-heel',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('plantar-heel-pain'),
		says:
			'Heel pain under the foot: firm heel cup, a midfoot that does not twist, some heel ' +
			'height.',
		seek: ['firm-heel-counter', 'torsional-stiffness', 'raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'heel-collar',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('haglund-deformity', 'blister'),
		says:
			'Bump or blister at the back of the heel: a padded collar, and no hard edge where it ' +
			'rubs.',
		seek: ['padded-collar'],
		avoid: ['firm-heel-counter'],
		basis: practice,
	},
	{
		id: 'heel-pad',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('heel-fat-pad-pain'),
		says: 'Sore heel pad: a cushioned heel inside a firm cup, and more studs under the heel.',
		seek: ['full-length-cushioning', 'firm-heel-counter', 'many-studs'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'calf-lever',
		needs: ['conditions'],
		when: (facts) =>
			facts.nowAnywhere('achilles-midportion', 'achilles-insertional', 'calf-strain'),
		says:
			'Achilles or calf: a forefoot that bends shortens the lever on the calf. This is belief, ' +
			'not trial evidence.',
		seek: ['flexible-forefoot'],
		avoid: ['stiff-forefoot'],
		basis: belief,
	},
	{
		id: 'calf-history',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('achilles-midportion', 'calf-strain'),
		says: 'Achilles or calf trouble, now or before: no sudden change to a flat sole.',
		seek: [],
		avoid: ['low-heel'],
		basis: practice,
	},
]
