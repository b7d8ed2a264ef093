/**
 * Finding to element, one row each: amount, range, where it may go, and what speaks against it.
 * Never for shape alone: a symptom or a measured limit is asked for.
 */
import type { InsertElement } from '../findings/assessment.ts'
import type { Because, Strength } from '../protocol/basis.ts'
import type { ThresholdKey } from '../protocol/protocol.ts'
import { type Condition, termWords } from '../visit/terms.ts'
import type { InsertFacts } from './facts.ts'

export const elementWords = {
	device: 'device',
	shell: 'shell',
	'heel-cup': 'heel cup',
	'rearfoot-post-medial': 'medial rearfoot post',
	'rearfoot-post-lateral': 'lateral rearfoot post',
	'medial-skive': 'medial heel skive',
	'lateral-skive': 'lateral heel skive',
	'forefoot-post-medial': 'medial forefoot post',
	'forefoot-post-lateral': 'lateral forefoot post',
	'first-ray-cutout': 'first-ray cut-out',
	'forefoot-stiffener': 'forefoot stiffener',
	'metatarsal-dome': 'metatarsal dome',
	'forefoot-cushion': 'forefoot cushion',
	'first-head-aperture': 'aperture under the first head',
	'heel-aperture': 'heel aperture',
	'heel-cushion': 'heel cushion',
	'heel-raise': 'heel raise',
	'leg-length-raise': 'leg-length raise',
	cover: 'cover',
	length: 'length',
} as const
export type ElementId = keyof typeof elementWords

export interface ElementRow {
	element: ElementId
	/** The reasons that call for it; none: it is not proposed. */
	when(facts: InsertFacts): Because[]
	key: ThresholdKey
	unit: string
	/** The rows of the usual least and most. */
	range: readonly [ThresholdKey, ThresholdKey]
	where: InsertElement['where']
	says: string
	/** Whether a shell is needed to carry it; a raise or a cushion alone needs none. */
	device: boolean
	/** Conditions on the same side, or a measured finding, that speak against it, and the words. */
	against: readonly {
		conditions: readonly Condition[]
		found?(facts: InsertFacts): boolean
		says: string
		hard?: true
	}[]
	/** Always said. */
	cautions: readonly string[]
}
const pronated = (f: InsertFacts): Because[] =>
	f.fpiBand === 'pronated' || f.fpiBand === 'highly-pronated'
		? [{ measure: 'Foot posture index', value: f.fpi ?? f.fpiBand }]
		: []
const supinated = (f: InsertFacts): Because[] =>
	f.fpiBand === 'supinated' || f.fpiBand === 'highly-supinated'
		? [{ measure: 'Foot posture index', value: f.fpi ?? f.fpiBand }]
		: []
const only = (holds: boolean, measure: string, value: string | number): Because[] =>
	holds ? [{ measure, value }] : []
/** Every group of reasons must be there. */
const together = (...groups: Because[][]): Because[] =>
	groups.every((group) => group.length > 0) ? groups.flat() : []
const flatPain = (f: InsertFacts) =>
	f.now('flexible-flatfoot-pain', 'posterior-tibial-tendinopathy', 'shin-pain')
const outerPain = (f: InsertFacts) =>
	f.now('lateral-ankle-instability', 'peroneal-tendinopathy', 'cavus-foot-pain')
const forefootPain = (f: InsertFacts) =>
	f.now(
		'sesamoid-pain',
		'metatarsalgia',
		'cavus-foot-pain',
		'lateral-ankle-instability',
		'peroneal-tendinopathy',
	)

export const elementRows: readonly ElementRow[] = [
	{
		element: 'rearfoot-post-medial',
		when: (f) =>
			together([...pronated(f), ...f.now('flexible-flatfoot-pain')].slice(0, 1), flatPain(f)),
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
		when: (f) =>
			together(
				only(f.supinationResistance === 'high', 'Supination resistance', 'high'),
				pronated(f),
				flatPain(f),
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
		when: (f) => together([...supinated(f), ...f.now('cavus-foot-pain')].slice(0, 1), outerPain(f)),
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
		when: (f) => together(supinated(f), f.now('peroneal-tendinopathy')),
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
	{
		element: 'forefoot-post-lateral',
		when: (f) =>
			together(
				[
					...only(f.forefoot === 'valgus-flexible', 'Forefoot', 'valgus, flexible'),
					...only(f.firstRay === 'plantarflexed', 'First ray', 'plantarflexed'),
				],
				forefootPain(f),
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
		when: (f) =>
			together(only(f.forefoot === 'varus-flexible', 'Forefoot', 'varus, flexible'), flatPain(f)),
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
				found: (f) => f.firstMtp === 'functional-limit' || f.firstMtp === 'structural-limit',
				says: 'first joint limited when measured: a medial forefoot post jams it',
				hard: true,
			},
		],
		cautions: ['It can jam the first ray.'],
	},
	{
		element: 'first-ray-cutout',
		when: (f) => [
			...together(
				only(f.firstMtp === 'functional-limit', 'First MTP', 'functional limit'),
				f.now('hallux-limitus', 'plantar-heel-pain', 'metatarsalgia'),
			),
			...together(
				only(f.firstRay === 'plantarflexed', 'First ray', 'plantarflexed'),
				f.now('sesamoid-pain', 'metatarsalgia', 'cavus-foot-pain'),
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
				found: (f) => f.forefoot?.startsWith('varus') === true,
				says: 'forefoot varus: the first ray has no ground to come down to',
				hard: true,
			},
		],
		cautions: ['Proof in walking is weak.'],
	},
	{
		element: 'forefoot-stiffener',
		when: (f) => [
			...f.now('first-mtp-osteoarthritis', 'turf-toe'),
			...together(
				only(f.firstMtp === 'structural-limit', 'First MTP', 'structural limit'),
				f.now('hallux-limitus'),
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
		when: (f) => f.now('metatarsalgia'),
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
		when: (f) =>
			f.now('metatarsalgia', 'interdigital-neuroma', 'second-metatarsal-stress-fracture'),
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
		when: (f) => f.now('sesamoid-pain'),
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
	{
		element: 'heel-aperture',
		when: (f) => f.now('plantar-heel-pain'),
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
		when: (f) => [...f.anySide('calcaneal-apophysitis'), ...f.now('heel-fat-pad-pain')],
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
		when: (f) => [
			...only(
				f.ankleRaiseMm !== undefined,
				'Heel raise proposed from the ankle',
				f.ankleRaiseMm ?? 0,
			),
			...f.anySide('achilles-midportion', 'achilles-insertional', 'haglund-deformity'),
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
		when: (f) => f.now('cavus-foot-pain'),
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
/** Words against this element on this side; `hard` ones take it out. */
export function speaksAgainst(
	row: ElementRow,
	facts: InsertFacts,
): { says: string; hard: boolean }[] {
	const history: readonly Condition[] = [
		'fifth-metatarsal-stress-fracture',
		'lateral-ankle-instability',
	]
	return row.against.flatMap(({ conditions, found: measured, says, hard }) => {
		if (measured?.(facts)) return [{ says, hard: hard === true }]
		const found = conditions.filter(
			(condition) =>
				(history.includes(condition) ? facts.ever(condition) : facts.now(condition)).length > 0,
		)
		return found.length > 0
			? [{ says: `${says} (${found.map(termWords).join(', ')})`, hard: hard === true }]
			: []
	})
}
export const practiceBasis = (
	rule: string,
): { rule: string; source: string; strength: Strength } => ({
	rule,
	source: 'common practice, no source',
	strength: 'practice',
})
