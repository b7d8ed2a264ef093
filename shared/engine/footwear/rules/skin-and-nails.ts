/** What toes, nails, skin and feeling ask of a shoe. */
import { toeRoomBand } from '../../facts/toe-room.ts'
import { state } from '../../words/statement.ts'
import { type FootwearRule, practice } from './rule.ts'

export const skinAndNailRules: readonly FootwearRule[] = [
	{
		id: 'toenails',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['ingrown-toenail', 'subungual-haematoma'],
		says: ({ adult }, protocol) => {
			const { span } = toeRoomBand('boots', { adult, nailsAreSore: true }, protocol)
			return state('footwear.toenails', { leastMm: span.min, mostMm: span.max })
		},
		seek: ['deep-toe-box'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'hammer-toe',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['hammer-toe', 'blister'],
		seek: ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'sensation',
		rank: 'skin-and-joints',
		needs: ['conditions', 'screening'],
		conditions: ['neuropathy', 'previous-foot-ulcer', 'diabetes'],
		when: 'ever',
		found: ({ footAtRisk }) => footAtRisk,
		protects: true,
		seek: ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		avoid: ['narrow-fitting'],
		basis: { source: 'NICE NG19', strength: 'guideline' },
	},
	{
		id: 'skin-at-risk',
		rank: 'skin-and-joints',
		needs: ['conditions', 'screening'],
		conditions: ['neuropathy', 'previous-foot-ulcer'],
		when: 'ever',
		found: ({ footAtRisk }) => footAtRisk,
		protects: true,
		seek: [
			'many-studs',
			'short-studs',
			'stud-clear-of-first-joint',
			'stud-clear-of-fifth-metatarsal',
		],
		avoid: ['long-studs', 'bladed-studs', 'narrow-fitting'],
		strict: [
			'stud-clear-of-first-joint',
			'stud-clear-of-fifth-metatarsal',
			'long-studs',
			'bladed-studs',
			'narrow-fitting',
		],
		basis: {
			source: 'NICE NG19 (high risk); studs common practice, no source',
			strength: 'practice',
		},
	},
]
