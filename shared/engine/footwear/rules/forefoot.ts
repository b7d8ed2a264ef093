/** What the toes' joints, the metatarsals and the midfoot ask of a shoe. */
import { type FootwearRule, practice } from './rule.ts'

export const forefootRules: readonly FootwearRule[] = [
	{
		id: 'sesamoid',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('sesamoid-pain'),
		says:
			'Sesamoid pain: stiff forefoot, no stud under the first joint, some heel height but no ' +
			'steep one.',
		seek: ['stiff-forefoot', 'stud-clear-of-first-joint'],
		avoid: ['flexible-forefoot'],
		basis: {
			source: 'DeBiasio 2013, J Athl Train 48:601 (forefoot load); rest common practice, no source',
			strength: 'practice',
		},
	},
	{
		id: 'first-joint',
		needs: ['conditions', 'posture'],
		when: (facts) => [
			...facts.stiffFirstJoint,
			...facts.nowAnywhere('first-mtp-osteoarthritis', 'hallux-limitus'),
		],
		says: 'Stiff first joint: a stiff forefoot plate limits its bend; depth over the joint.',
		seek: ['stiff-forefoot', 'deep-toe-box'],
		avoid: ['flexible-forefoot'],
		basis: {
			source: 'Munteanu 2021 (adults, about 57 years: carried over to players)',
			strength: 'trial',
		},
	},
	{
		id: 'turf-toe',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('turf-toe'),
		says: 'Turf toe: a bendy forefoot with high grip goes with more bending back of the toe.',
		seek: ['stiff-forefoot', 'low-rotational-grip'],
		avoid: ['flexible-forefoot'],
		basis: { source: 'Rodeo 1990, Am J Sports Med 18:280', strength: 'cohort' },
	},
	{
		id: 'forefoot-pain',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('metatarsalgia', 'second-metatarsal-stress-fracture'),
		says: 'Forefoot pain: more contact points and a wider forefoot spread the load.',
		seek: ['many-studs', 'wide-fitting', 'removable-liner'],
		avoid: ['bladed-studs', 'long-studs'],
		basis: practice,
	},
	{
		id: 'neuroma',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('interdigital-neuroma'),
		says: 'Neuroma: width and cushioning at the ball; a tight forefoot squeezes it.',
		seek: ['wide-fitting', 'soft-upper', 'removable-liner'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'bunion',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('hallux-valgus', 'bunionette'),
		says: 'Bunion: soft upper, no seam over the joint, a wide last.',
		seek: ['soft-upper', 'smooth-forefoot-seams', 'wide-fitting'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'bunionette-stud',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('bunionette'),
		says: 'Bunion of the little toe: no stud and no seam under or beside the fifth head.',
		seek: ['stud-clear-of-fifth-metatarsal', 'smooth-forefoot-seams'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'fifth-metatarsal',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('fifth-metatarsal-stress-fracture'),
		says:
			'Fifth metatarsal stress fracture, now or before: round studs, none under the fifth ' +
			'metatarsal, a wide platform; keep the share of artificial turf below four fifths.',
		seek: ['round-studs', 'stud-clear-of-fifth-metatarsal', 'wide-base'],
		avoid: ['bladed-studs', 'narrow-fitting'],
		basis: {
			source:
				'Bentley 2011, Foot Ankle Surg 17:140; Miyamori 2019, BMJ Open 9:e022864 (turf, odds ' +
				'ratio 3.44)',
			strength: 'cohort',
		},
	},
	{
		id: 'fifth-apophysis',
		needs: ['conditions'],
		when: (facts) => facts.nowAnywhere('fifth-metatarsal-apophysitis'),
		says: 'Growing base of the fifth metatarsal: width and softness at the outer border.',
		seek: ['wide-fitting', 'stud-clear-of-fifth-metatarsal', 'soft-upper'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'navicular',
		needs: ['conditions'],
		when: (facts) => facts.everAnywhere('navicular-stress-fracture'),
		says:
			'Navicular stress fracture, now or before: a midfoot that does not twist and some ' +
			'cushioning.',
		seek: ['torsional-stiffness', 'full-length-cushioning'],
		avoid: [],
		basis: practice,
	},
]
