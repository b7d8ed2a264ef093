/** Relief and height under the heel, and the cover of a painful high arch. */
import { type ElementRow, only } from './row.ts'

export const heelAndCoverRows: readonly ElementRow[] = [
	{
		element: 'heel-aperture',
		when: (facts) => facts.nowHereOrUnsided('plantar-heel-pain'),
		key: 'insert.heelApertureMm',
		unit: 'mm deep',
		range: ['insert.heelApertureMinMm', 'insert.heelApertureMaxMm'],
		where: 'both',
		device: true,
		says: 'Contoured device with a heel aperture or pad for pain under the heel.',
		against: [],
		cautions: ['Exclude a bone stress injury of the heel first: squeeze it from both sides.'],
	},
	{
		element: 'heel-cushion',
		when: (facts) => [
			...facts.nowAnywhere('calcaneal-apophysitis'),
			...facts.nowHereOrUnsided('heel-fat-pad-pain'),
		],
		key: 'insert.heelCushionMm',
		unit: 'mm',
		range: ['insert.heelCushionMinMm', 'insert.heelCushionMaxMm'],
		where: 'both',
		device: false,
		says: 'Heel cushion, both feet in a growing heel.',
		against: [],
		cautions: ['Count it with the raise: the boot must still hold the heel.'],
	},
	{
		element: 'heel-raise',
		when: (facts) => [
			...only(
				facts.ankleRaiseMm !== undefined,
				'Heel raise proposed from the ankle',
				facts.ankleRaiseMm ?? 0,
			),
			...facts.nowAnywhere('achilles-midportion', 'achilles-insertional', 'haglund-deformity'),
		],
		key: 'insert.achillesRaiseMm',
		unit: 'mm',
		range: ['insert.achillesRaiseMinMm', 'insert.achillesRaiseMaxMm'],
		where: 'both',
		device: false,
		says: 'Heel raise in both shoes. It does not treat the cause.',
		against: [
			{
				conditions: ['posterior-ankle-impingement'],
				says: 'impingement at the back of the ankle: a raise presses there',
				hard: true,
			},
			{
				conditions: ['sesamoid-pain', 'metatarsalgia'],
				says: 'forefoot pain: a raise moves load forwards',
			},
			{
				conditions: ['patellofemoral-pain', 'patellar-tendinopathy'],
				says: 'front knee pain: a raise can load it more',
			},
		],
		cautions: [
			'Same raise in boots and trainers, or taper on purpose. In boots 10 mm had no effect in a ' +
				'group of nine. Check heel slip.',
		],
	},
	{
		element: 'cover',
		when: (facts) => facts.nowHereOrUnsided('cavus-foot-pain'),
		key: 'insert.coverCavusMm',
		unit: 'mm',
		range: ['insert.coverCavusMinMm', 'insert.coverCavusMaxMm'],
		where: 'trainer',
		device: true,
		says: 'Full-contact cushioned cover for a painful high arch.',
		against: [],
		cautions: ['In boots 1 mm at most.'],
	},
]
