/** What the range, the joints and the tendons of the ankle ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const ankleRules: readonly FootwearRule[] = [
	{
		id: 'restricted-ankle',
		needs: ['ankles'],
		found: (facts) => facts.restricted,
		seek: ['raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'anterior-ankle',
		needs: ['conditions', 'ankles'],
		conditions: ['anterior-ankle-impingement'],
		found: (facts) => facts.pinched,
		seek: ['raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'posterior-ankle',
		needs: ['conditions'],
		conditions: ['posterior-ankle-impingement'],
		seek: ['low-heel-collar'],
		avoid: ['raised-heel'],
		basis: practice,
	},
	{
		id: 'ankle-instability',
		needs: ['conditions'],
		conditions: ['lateral-ankle-instability'],
		when: 'ever',
		seek: ['wide-base', 'short-studs', 'low-rotational-grip'],
		avoid: ['bladed-studs'],
		basis: {
			source: 'Thomson 2015, Br J Sports Med 49:1245; rest common practice, no source',
			strength: 'cohort',
		},
	},
	{
		id: 'ankle-support',
		needs: ['conditions'],
		conditions: ['lateral-ankle-instability', 'posterior-tibial-tendinopathy'],
		seek: ['high-heel-counter', 'firm-heel-counter'],
		avoid: ['soft-heel-counter'],
		basis: practice,
	},
	{
		id: 'syndesmosis',
		needs: ['conditions'],
		conditions: ['syndesmosis-sprain'],
		seek: ['low-rotational-grip', 'wide-base'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
	{
		id: 'inner-tendon',
		needs: ['conditions'],
		conditions: ['posterior-tibial-tendinopathy', 'sinus-tarsi-pain'],
		seek: ['torsional-stiffness', 'removable-liner'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'outer-tendon',
		needs: ['conditions'],
		conditions: ['peroneal-tendinopathy'],
		seek: ['wide-base', 'firm-heel-counter'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
]
