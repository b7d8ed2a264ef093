/** What the knee, the leg and the whole body's joints ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const legRules: readonly FootwearRule[] = [
	{
		id: 'acl',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('acl-history'),
		says:
			'ACL injury, now or before: round studs and less grip in turning. High grip has been ' +
			'associated with about twice the lower-limb injuries.',
		seek: ['round-studs', 'low-rotational-grip'],
		avoid: ['bladed-studs'],
		basis: { source: 'Thomson 2015, Br J Sports Med 49:1245 (4972 men)', strength: 'cohort' },
	},
	{
		id: 'shin-knee',
		needs: ['conditions'],
		when: (facts) =>
			facts.nowAnywhere(
				'shin-pain',
				'patellofemoral-pain',
				'patellar-tendinopathy',
				'tibial-tubercle-apophysitis',
			),
		says: 'Shin or knee pain: cushioning for training, and studs that turn easily.',
		seek: ['full-length-cushioning', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'knee-wear',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('knee-osteoarthritis'),
		says: 'Knee osteoarthritis: cushioning for training and studs that turn easily.',
		seek: ['full-length-cushioning', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'leg-length',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('leg-length-difference'),
		says: 'Leg-length difference: a liner that comes out leaves room for a raise.',
		seek: ['removable-liner'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'hypermobile',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('hypermobility'),
		says: 'Very mobile joints: a steadier boot.',
		seek: ['firm-heel-counter', 'torsional-stiffness', 'wide-base'],
		avoid: [],
		basis: practice,
	},
]
