/**
 * Lacing by purpose. Trade practice only, no outcome data; wording of our own. The drawing of each
 * is in lacing-figure.ts.
 */
import type { Because } from '../protocol/basis.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { WorkFacts, WorkRow } from './work.ts'

export const lacingIds = [
	'heel-lock',
	'window',
	'forefoot-room',
	'toe-lift',
	'parallel',
	'two-zone',
	'narrow-foot',
	'midfoot-lock',
] as const
export type LacingId = (typeof lacingIds)[number]
const reducedFeeling = {
	conditions: ['neuropathy', 'diabetes', 'previous-foot-ulcer'],
	says: 'Reduced feeling: never pull tight over the instep, and look at the skin after wear.',
} as const
const tradePractice = (rule: string) => () => ({
	rule,
	source: 'trade practice, no outcome data',
	strength: 'practice' as const,
})
const bootLimits =
	'Boots have few holes; a lace cover or side lacing may rule it out. Check again with the ' +
	'insert inside; numbness means too tight.'
/** Heel width over ball width, per side, where both are measured. */
const narrowHeel = (facts: WorkFacts, side: Side): Because[] => {
	const heelMm = meanOf(facts.visit.feet?.[side]?.heelWidthMm)
	const ballMm = meanOf(facts.visit.feet?.[side]?.ballWidthMm)
	if (heelMm === undefined || ballMm === undefined) return []
	if (heelMm / ballMm >= facts.protocol.value('footwear.narrowHeelRatio')) return []
	return [
		{ measure: `Heel width, ${side}`, value: heelMm, unit: 'mm' },
		{ measure: `Ball width, ${side}`, value: ballMm, unit: 'mm' },
	]
}
const slippingHeel = (facts: WorkFacts): Because[] =>
	(facts.visit.footwear ?? [])
		.filter((pair) => pair.damage?.includes('heel-slips'))
		.map((pair) => ({ measure: `Heel slips in ${pair.name ?? pair.id}`, value: 'yes' }))

export const lacingRows: readonly (WorkRow & { id: LacingId })[] = [
	{
		id: 'heel-lock',
		name: 'Heel lock',
		sided: false,
		when: (facts) => [...slippingHeel(facts), ...(facts.raise?.because ?? [])],
		says: () =>
			'Holds the heel down: bring each lace up through the next hole on its own side to leave a ' +
			'loop there, cross the ends, pass each through the loop opposite, draw down and tie.',
		limits: `${bootLimits} In boots leave no loop where the knot could meet the ball.`,
		against: [
			{
				conditions: ['anterior-ankle-impingement'],
				says: 'Pinch at the front of the ankle: the lock presses there.',
			},
			{
				conditions: ['achilles-insertional', 'haglund-deformity'],
				says: 'Back of the heel sore: the lock pulls it against the counter.',
			},
			reducedFeeling,
		],
		basis: tradePractice('heel lock'),
	},
	{
		id: 'window',
		name: 'Window over the instep',
		sided: false,
		when: (facts) => [...facts.wished('deep-instep'), ...facts.nowAnywhere('cavus-foot-pain')],
		says: () =>
			'Takes pressure off the top of the foot: cross below the sore place, run straight up each ' +
			'side past it, then cross again.',
		limits: bootLimits,
		against: [reducedFeeling],
		basis: tradePractice('window lacing'),
	},
	{
		id: 'forefoot-room',
		name: 'Room at the forefoot',
		sided: false,
		when: (facts) => facts.wished('wide-fitting'),
		says: () =>
			'Room for a broad forefoot: leave out the crossings of the lowest two rows (run the lace ' +
			'up each side), and cross from the third row on.',
		limits: bootLimits,
		against: [reducedFeeling],
		basis: tradePractice('forefoot lacing'),
	},
	{
		id: 'toe-lift',
		name: 'Toe lift',
		sided: true,
		when: (facts, side) =>
			facts.nowOnSideOrUnsided(side, 'subungual-haematoma', 'ingrown-toenail', 'hammer-toe'),
		says: () =>
			'Lifts the toe box: one end runs from the lowest hole on the big-toe side straight across ' +
			'to the top hole of the other side; the other end ladders through the rest. Pulling the ' +
			'first end lifts the upper off the toe.',
		limits: `${bootLimits} It does not make up for a boot that is short or shallow.`,
		against: [reducedFeeling],
		basis: tradePractice('toe lift lacing'),
	},
	{
		id: 'parallel',
		name: 'Parallel bars',
		sided: false,
		when: (facts) =>
			facts.wished('soft-upper').length > 0 && facts.wished('wide-fitting').length > 0
				? facts.nowAnywhere('interdigital-neuroma', 'metatarsalgia')
				: [],
		says: () =>
			'Even and loose all over: straight bars across each row, the rise hidden along the sides.',
		limits: bootLimits,
		against: [reducedFeeling],
		basis: tradePractice('parallel lacing'),
	},
	{
		id: 'two-zone',
		name: 'Two laces',
		sided: false,
		when: (facts) =>
			facts.wished('wide-fitting').length > 0
				? bothSides.flatMap((side) => narrowHeel(facts, side))
				: [],
		says: () =>
			'Narrow heel and broad forefoot: one lace for the lower rows, left loose, and a second ' +
			'for the upper rows, drawn tight.',
		limits: bootLimits,
		against: [reducedFeeling],
		basis: (facts) => facts.protocol.basis('two laces', 'footwear.narrowHeelRatio'),
	},
	{
		id: 'narrow-foot',
		name: 'Drawn in for a narrow foot',
		sided: false,
		when: (facts) => facts.unwished('wide-fitting'),
		says: () =>
			'Draws the upper in: use the outermost holes where there are two rows, and tighten the ' +
			'middle rows first.',
		limits: bootLimits,
		against: [reducedFeeling],
		basis: tradePractice('narrow-foot lacing'),
	},
	{
		id: 'midfoot-lock',
		name: 'Midfoot lock',
		sided: false,
		when: (facts) => facts.nowAnywhere('flexible-flatfoot-pain', 'hypermobility'),
		says: () =>
			"Holds the midfoot: an extra turn of the knot (a surgeon's knot) at the third row, then " +
			'lace on.',
		limits: bootLimits,
		against: [
			{
				conditions: ['cavus-foot-pain'],
				says: 'High arch with pain: the knot presses on the instep.',
			},
			reducedFeeling,
		],
		basis: tradePractice('midfoot lock'),
	},
]
