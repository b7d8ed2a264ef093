/** Posts and skives under the heel: they tilt the rearfoot. */
import { type ElementRow, flatPain, only, outerPain, pronated, supinated, together } from './row.ts'

export const rearfootRows: readonly ElementRow[] = [
	{
		element: 'rearfoot-post-medial',
		when: (facts) =>
			together(
				[...pronated(facts), ...facts.nowHereOrUnsided('flexible-flatfoot-pain')].slice(0, 1),
				flatPain(facts),
			),
		key: 'insert.rearfootMedialDeg',
		unit: 'deg',
		range: ['insert.rearfootMedialMinDeg', 'insert.rearfootMedialMaxDeg'],
		where: 'both',
		device: true,
		says:
			'Medial rearfoot post for a painful pronated foot. The effect on movement is small: ' +
			'aim at comfort.',
		against: [
			{
				conditions: ['lateral-ankle-instability'],
				says: 'lateral ankle instability: a medial post can tip the ankle outwards',
			},
			{
				conditions: ['knee-osteoarthritis'],
				says: 'knee osteoarthritis: a medial post raises the inward load on the knee',
				hard: true,
			},
		],
		cautions: ['Not for a rigid foot. Raises the inward load on the knee.'],
	},
	{
		element: 'medial-skive',
		when: (facts) =>
			together(
				only(facts.supinationResistance === 'high', 'Supination resistance', 'high'),
				pronated(facts),
				flatPain(facts),
			),
		key: 'insert.medialSkiveMm',
		unit: 'mm',
		range: ['insert.medialSkiveMinMm', 'insert.medialSkiveMaxMm'],
		where: 'trainer',
		device: true,
		says:
			'Medial heel skive for a painful pronated foot that resists supination; 2 mm has ' +
			'shown no effect.',
		against: [
			{
				conditions: ['heel-fat-pad-pain', 'plantar-heel-pain'],
				says: 'pain under the heel: a skive presses there',
				hard: true,
			},
		],
		cautions: ['Needs a heel cup of 14 mm or more, which a boot does not hold.'],
	},
	{
		element: 'rearfoot-post-lateral',
		when: (facts) =>
			together(
				[...supinated(facts), ...facts.nowHereOrUnsided('cavus-foot-pain')].slice(0, 1),
				outerPain(facts),
			),
		key: 'insert.rearfootLateralDeg',
		unit: 'deg',
		range: ['insert.rearfootLateralMinDeg', 'insert.rearfootLateralMaxDeg'],
		where: 'both',
		device: true,
		says: 'Lateral rearfoot post for a supinated foot with outer foot or ankle trouble.',
		against: [
			{
				conditions: ['flexible-flatfoot-pain', 'sinus-tarsi-pain', 'posterior-tibial-tendinopathy'],
				says: 'pain on the inner side or in the sinus tarsi: a lateral post loads it',
				hard: true,
			},
			{
				conditions: ['fifth-metatarsal-stress-fracture'],
				says:
					'fifth metatarsal stress fracture, now or before: sources disagree on lateral ' +
					'posting; nothing hard under the fifth metatarsal',
			},
		],
		cautions: [
			'Boots load the outer midfoot more than trainers: keep the post off the fifth metatarsal.',
		],
	},
	{
		element: 'lateral-skive',
		when: (facts) => together(supinated(facts), facts.nowHereOrUnsided('peroneal-tendinopathy')),
		key: 'insert.lateralSkiveMm',
		unit: 'mm',
		range: ['insert.lateralSkiveMinMm', 'insert.lateralSkiveMaxMm'],
		where: 'trainer',
		device: true,
		says: 'Lateral heel skive for a supinated foot with peroneal tendon pain.',
		against: [
			{
				conditions: [
					'flexible-flatfoot-pain',
					'sinus-tarsi-pain',
					'heel-fat-pad-pain',
					'plantar-heel-pain',
				],
				says: 'inner-side, sinus tarsi or heel pain: a lateral skive loads it',
				hard: true,
			},
		],
		cautions: ['Needs a heel cup of 14 mm or more, which a boot does not hold.'],
	},
]
