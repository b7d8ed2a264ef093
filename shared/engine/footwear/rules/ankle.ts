/** What the range, the joints and the tendons of the ankle ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const ankleRules: readonly FootwearRule[] = [
	{
		id: 'restricted-ankle',
		needs: ['ankles'],
		when: (facts) => facts.restricted,
		says: 'Restricted ankle range: a raised heel eases the demand on the calf.',
		seek: ['raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'anterior-ankle',
		needs: ['conditions', 'ankles'],
		when: (facts) => [...facts.pinched, ...facts.nowAnywhere('anterior-ankle-impingement')],
		says: 'A pinch at the front of the ankle is eased by a raised heel.',
		seek: ['raised-heel'],
		avoid: ['low-heel'],
		basis: practice,
	},
	{
		id: 'posterior-ankle',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('posterior-ankle-impingement'),
		says: 'Impingement at the back of the ankle: a high heel and a stiff high collar press there.',
		seek: ['low-heel-collar'],
		avoid: ['raised-heel'],
		basis: practice,
	},
	{
		id: 'ankle-instability',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('lateral-ankle-instability'),
		says:
			'Ankle that gives way, now or before: wide base, moderate studs, less grip in turning, ' +
			'room for a brace.',
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
		when: (facts) =>
			facts.nowAnywhere('lateral-ankle-instability', 'posterior-tibial-tendinopathy'),
		says: 'Ankle or inner tendon that needs holding: a counter that stands high and firm.',
		seek: ['high-heel-counter', 'firm-heel-counter'],
		avoid: ['soft-heel-counter'],
		basis: practice,
	},
	{
		id: 'syndesmosis',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('syndesmosis-sprain'),
		says: 'High ankle sprain: less grip in turning.',
		seek: ['low-rotational-grip', 'wide-base'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
	{
		id: 'inner-tendon',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('posterior-tibial-tendinopathy', 'sinus-tarsi-pain'),
		says:
			'Inner ankle or sinus tarsi: a midfoot that does not twist and a liner that comes out for ' +
			'an insert.',
		seek: ['torsional-stiffness', 'removable-liner'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'outer-tendon',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('peroneal-tendinopathy'),
		says: 'Outer ankle tendons: a wide outer platform and a steady heel.',
		seek: ['wide-base', 'firm-heel-counter'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
]
