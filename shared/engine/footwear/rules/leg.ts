/** What the knee, the leg and the whole body's joints ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const legRules: readonly FootwearRule[] = [
	{
		id: 'acl',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['acl-history'],
		when: 'ever',
		seek: ['round-studs', 'low-rotational-grip'],
		avoid: ['bladed-studs'],
		practiceOnly: ['round-studs', 'bladed-studs'],
		basis: { source: 'Thomson 2015, Br J Sports Med 49:1245 (4972 men)', strength: 'cohort' },
	},
	{
		id: 'shin-knee',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: [
			'shin-pain',
			'patellofemoral-pain',
			'patellar-tendinopathy',
			'tibial-tubercle-apophysitis',
		],
		seek: ['full-length-cushioning', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'knee-wear',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['knee-osteoarthritis'],
		seek: ['full-length-cushioning', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'leg-length',
		rank: 'shape',
		needs: ['conditions'],
		conditions: ['leg-length-difference'],
		seek: ['removable-liner'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'hypermobile',
		rank: 'shape',
		needs: ['conditions', 'body'],
		conditions: ['hypermobility'],
		found: (facts) => facts.mobileJoints,
		seek: ['firm-heel-counter', 'torsional-stiffness', 'wide-base'],
		avoid: [],
		basis: practice,
	},
]
