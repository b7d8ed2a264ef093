/** What toes, nails, skin and feeling ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const skinAndNailRules: readonly FootwearRule[] = [
	{
		id: 'toenails',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('ingrown-toenail', 'subungual-haematoma'),
		says: 'Toenails: depth and 8 to 12 mm before the toes while standing; never one size down.',
		seek: ['deep-toe-box'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'hammer-toe',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('hammer-toe', 'blister'),
		says: 'Rubbed toes: depth, soft upper, no seams over the forefoot.',
		seek: ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'sensation',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('neuropathy', 'previous-foot-ulcer', 'diabetes'),
		says: 'Feet at risk: depth, soft upper without seams; no new boot without review.',
		seek: ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		avoid: ['narrow-fitting'],
		basis: { source: 'NICE NG19', strength: 'guideline' },
	},
	{
		id: 'skin-at-risk',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('neuropathy', 'previous-foot-ulcer'),
		says: 'Skin at risk: many low studs, none under a place of high pressure.',
		seek: ['many-studs', 'short-studs', 'stud-clear-of-first-joint'],
		avoid: ['long-studs', 'bladed-studs'],
		basis: {
			source: 'NICE NG19 (high risk); studs common practice, no source',
			strength: 'practice',
		},
	},
]
