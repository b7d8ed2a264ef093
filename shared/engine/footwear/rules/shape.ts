/** What the measured shape and posture of the foot ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const shapeRules: readonly FootwearRule[] = [
	{
		id: 'broad',
		needs: ['feet'],
		when: (facts) => facts.broad,
		says:
			'Broad foot for its length: a wide and deep forefoot in an upper that gives; lacing that ' +
			'skips the lowest rows adds room.',
		seek: ['wide-fitting', 'deep-toe-box', 'soft-upper'],
		avoid: ['narrow-fitting'],
		basis: { ...practice, threshold: 'footwear.broadZ' },
	},
	{
		id: 'narrow',
		needs: ['feet'],
		when: (facts) => facts.narrow,
		says:
			'Narrow foot: most boots are low in volume already. Try a thicker sock and lacing first, a ' +
			'narrow fitting last.',
		seek: [],
		avoid: ['wide-fitting'],
		basis: { ...practice, threshold: 'footwear.narrowZ' },
	},
	{
		id: 'between-sizes',
		needs: ['feet', 'conditions'],
		when: (facts) =>
			facts.narrow.length > 0 && facts.nowAnywhere('subungual-haematoma').length > 0
				? [...facts.narrow, ...facts.nowAnywhere('subungual-haematoma')]
				: [],
		says:
			'Narrow foot with bruised nails: the foot slides forward. Hold the heel and the instep ' +
			'rather than take a shorter boot.',
		seek: ['firm-heel-counter'],
		avoid: ['wide-fitting'],
		basis: practice,
	},
	{
		id: 'unequal-feet',
		needs: ['feet'],
		when: (facts) => facts.longer,
		says:
			'Feet of different length: fit the longer foot; a liner that comes out lets the shorter ' +
			'side be padded.',
		seek: ['removable-liner'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'first-ray',
		needs: ['posture'],
		when: (facts) => facts.plantarflexedFirstRay,
		says:
			'A plantarflexed first ray and a stud under the first joint concentrate pressure there: ' +
			'choose a sole without it, or have that stud lowered.',
		seek: ['stud-clear-of-first-joint'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'first-ray-mobile',
		needs: ['posture'],
		when: (facts) => facts.mobileFirstRay,
		says:
			'Very mobile first ray: a forefoot that does not give under it. The hand test agrees ' +
			'poorly between examiners.',
		seek: ['stiff-forefoot'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'cavus',
		needs: ['conditions', 'posture'],
		when: (facts) => [...facts.supinated, ...facts.nowAnywhere('cavus-foot-pain')],
		says: 'High arch: cushioning and a wide outer platform; bladed soles load the outer border.',
		seek: ['full-length-cushioning', 'wide-base', 'round-studs'],
		avoid: ['bladed-studs'],
		basis: {
			source: 'Bentley 2011, Foot Ankle Surg 17:140; rest common practice, no source',
			strength: 'practice',
		},
	},
	{
		id: 'high-instep',
		needs: ['conditions', 'posture'],
		when: (facts) => [...facts.supinated, ...facts.nowAnywhere('cavus-foot-pain')],
		says: 'High arch and instep: room over the instep, and lacing that leaves a window.',
		seek: ['deep-instep'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'pronated',
		needs: ['conditions', 'posture'],
		when: (facts) => [...facts.pronated, ...facts.nowAnywhere('flexible-flatfoot-pain')],
		says: 'Flat foot: a firm counter and a stiff midfoot hold an insert; the liner must come out.',
		seek: ['firm-heel-counter', 'torsional-stiffness', 'removable-liner'],
		avoid: ['soft-heel-counter'],
		basis: practice,
	},
]
