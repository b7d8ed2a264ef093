/** What stands under, or is cut out under, the forefoot and the first ray. */
import { type ElementRow, flatPain, forefootPain, only, together } from './row.ts'

export const forefootRows: readonly ElementRow[] = [
	{
		element: 'forefoot-post-lateral',
		when: (facts) =>
			together(
				[
					...only(facts.forefoot === 'valgus-flexible', 'Forefoot', 'valgus, flexible'),
					...only(facts.firstRay === 'plantarflexed', 'First ray', 'plantarflexed'),
				],
				forefootPain(facts),
			),
		key: 'insert.forefootLateralDeg',
		unit: 'deg',
		range: ['insert.forefootLateralMinDeg', 'insert.forefootLateralMaxDeg'],
		where: 'both',
		device: true,
		says:
			'Lateral forefoot post under heads 2 to 5 for a forefoot valgus or a plantarflexed ' +
			'first ray with pain.',
		against: [
			{
				conditions: ['fifth-metatarsal-stress-fracture'],
				says: 'fifth metatarsal stress fracture: no hard post under the fifth metatarsal',
				hard: true,
			},
			{ conditions: ['bunionette'], says: 'bunionette: the post loads the outer border' },
		],
		cautions: ['Not for a rigid midfoot.'],
	},
	{
		element: 'forefoot-post-medial',
		when: (facts) =>
			together(
				only(facts.forefoot === 'varus-flexible', 'Forefoot', 'varus, flexible'),
				flatPain(facts),
			),
		key: 'insert.forefootMedialDeg',
		unit: 'deg',
		range: ['insert.forefootMedialMinDeg', 'insert.forefootMedialMaxDeg'],
		where: 'both',
		device: true,
		says: 'Small medial forefoot post for a flexible forefoot varus with pain.',
		against: [
			{
				conditions: ['hallux-limitus', 'first-mtp-osteoarthritis', 'turf-toe'],
				says: 'stiff or painful first joint: a medial forefoot post jams it',
				hard: true,
			},
			{
				conditions: [],
				found: (facts) =>
					facts.firstMtp === 'functional-limit' || facts.firstMtp === 'structural-limit',
				says: 'first joint limited when measured: a medial forefoot post jams it',
				hard: true,
			},
		],
		cautions: ['It can jam the first ray.'],
	},
	{
		element: 'first-ray-cutout',
		when: (facts) => [
			...together(
				only(facts.firstMtp === 'functional-limit', 'First MTP', 'functional limit'),
				facts.nowHereOrUnsided('hallux-limitus', 'plantar-heel-pain', 'metatarsalgia'),
			),
			...together(
				only(facts.firstRay === 'plantarflexed', 'First ray', 'plantarflexed'),
				facts.nowHereOrUnsided('sesamoid-pain', 'metatarsalgia', 'cavus-foot-pain'),
			),
		],
		key: 'insert.firstRayCutoutMm',
		unit: 'mm',
		range: ['insert.firstRayCutoutMinMm', 'insert.firstRayCutoutMaxMm'],
		where: 'both',
		device: true,
		says:
			'First-ray cut-out in the front edge of the shell, so that the first ray can come ' +
			'down. Not the first thing to try: it narrows and unsteadies the front edge.',
		against: [
			{
				conditions: ['first-mtp-osteoarthritis', 'turf-toe'],
				says: 'painful first joint: it must be held, not freed',
				hard: true,
			},
			{
				conditions: [],
				found: (facts) => facts.forefoot?.startsWith('varus') === true,
				says: 'forefoot varus: the first ray has no ground to come down to',
				hard: true,
			},
		],
		cautions: ['Proof in walking is weak.'],
	},
	{
		element: 'forefoot-stiffener',
		when: (facts) => [
			...facts.nowHereOrUnsided('first-mtp-osteoarthritis', 'turf-toe'),
			...together(
				only(facts.firstMtp === 'structural-limit', 'First MTP', 'structural limit'),
				facts.nowHereOrUnsided('hallux-limitus'),
			),
		],
		key: 'insert.stiffenerMm',
		unit: 'mm carbon',
		range: ['insert.stiffenerMinMm', 'insert.stiffenerMaxMm'],
		where: 'both',
		device: false,
		says: 'Full-length stiff plate for a stiff or painful first joint.',
		against: [
			{
				conditions: ['calf-strain', 'achilles-midportion', 'achilles-insertional'],
				says: 'calf or Achilles trouble: a stiff plate lengthens the lever on it',
			},
		],
		cautions: [
			'It can cost push-off speed. Check that the sole of the boot does not already do it.',
		],
	},
	{
		element: 'metatarsal-dome',
		when: (facts) => facts.nowHereOrUnsided('metatarsalgia'),
		key: 'insert.domeMm',
		unit: 'mm high',
		range: ['insert.domeMinMm', 'insert.domeMaxMm'],
		where: 'both',
		device: false,
		says: 'Metatarsal dome behind the lesser heads.',
		against: [
			{
				conditions: ['interdigital-neuroma'],
				says: 'neuroma: a dome can irritate it; stop if tingling rises',
			},
		],
		cautions: [
			'In running, a forefoot cushion lowered pressure where a pad did not. Takes room in a boot.',
		],
	},
	{
		element: 'forefoot-cushion',
		when: (facts) =>
			facts.nowHereOrUnsided(
				'metatarsalgia',
				'interdigital-neuroma',
				'second-metatarsal-stress-fracture',
			),
		key: 'insert.forefootCushionMm',
		unit: 'mm',
		range: ['insert.forefootCushionMinMm', 'insert.forefootCushionMaxMm'],
		where: 'both',
		device: false,
		says: 'Forefoot cushion: in running it lowered the pressure under the heads.',
		against: [],
		cautions: ['Takes room over the toes.'],
	},
	{
		element: 'first-head-aperture',
		when: (facts) => facts.nowHereOrUnsided('sesamoid-pain'),
		key: 'insert.firstHeadApertureMm',
		unit: 'mm deep',
		range: ['insert.firstHeadApertureMinMm', 'insert.firstHeadApertureMaxMm'],
		where: 'both',
		device: false,
		says:
			'Aperture under the first head, with the padding around it, to take load off the ' +
			'sesamoids.',
		against: [],
		cautions: ['No soft plug in the hole. If focal bone pain stays after two weeks, image it.'],
	},
]
