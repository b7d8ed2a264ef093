/**
 * Lacing by purpose. Trade practice only, no outcome data; wording of our own. The drawing of each
 * is in lacing-figure.ts.
 */
import type { Because } from '../protocol/basis.ts'
import { meanOf } from '../visit/sides.ts'
import type { WorkFacts, WorkRow } from './modifications.ts'

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
const numb = {
	conditions: ['neuropathy', 'diabetes', 'previous-foot-ulcer'],
	says: 'Reduced feeling: never pull tight over the instep, and look at the skin after wear.',
} as const
const basis = (rule: string) => () => ({
	rule,
	source: 'trade practice, no outcome data',
	strength: 'practice' as const,
})
const bootLimits =
	'Boots have few holes; a lace cover or side lacing may rule it out. Check again with the ' +
	'insert inside; numbness means too tight.'
/** Heel width over ball width, per side, where both are measured. */
const narrowHeel = (f: WorkFacts, side: 'left' | 'right'): Because[] => {
	const heel = meanOf(f.visit.feet?.[side]?.heelWidthMm),
		ball = meanOf(f.visit.feet?.[side]?.ballWidthMm)
	return heel === undefined ||
		ball === undefined ||
		heel / ball >= f.protocol.value('footwear.narrowHeelRatio')
		? []
		: [
				{ measure: `Heel width, ${side}`, value: heel, unit: 'mm' },
				{ measure: `Ball width, ${side}`, value: ball, unit: 'mm' },
			]
}
const slips = (f: WorkFacts): Because[] =>
	(f.visit.footwear ?? [])
		.filter((pair) => pair.damage?.includes('heel-slips'))
		.map((pair) => ({ measure: `Heel slips in ${pair.name ?? pair.id}`, value: 'yes' }))

export const lacingRows: readonly (WorkRow & { id: LacingId })[] = [
	{
		id: 'heel-lock',
		name: 'Heel lock',
		sided: false,
		when: (f) => [...slips(f), ...(f.raise?.because ?? [])],
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
			numb,
		],
		basis: basis('heel lock'),
	},
	{
		id: 'window',
		name: 'Window over the instep',
		sided: false,
		when: (f) => [...f.wished('deep-instep'), ...f.now(undefined, 'cavus-foot-pain')],
		says: () =>
			'Takes pressure off the top of the foot: cross below the sore place, run straight up each ' +
			'side past it, then cross again.',
		limits: bootLimits,
		against: [numb],
		basis: basis('window lacing'),
	},
	{
		id: 'forefoot-room',
		name: 'Room at the forefoot',
		sided: false,
		when: (f) => f.wished('wide-fitting'),
		says: () =>
			'Room for a broad forefoot: leave out the crossings of the lowest two rows (run the lace ' +
			'up each side), and cross from the third row on.',
		limits: bootLimits,
		against: [numb],
		basis: basis('forefoot lacing'),
	},
	{
		id: 'toe-lift',
		name: 'Toe lift',
		sided: true,
		when: (f, side) => f.now(side, 'subungual-haematoma', 'ingrown-toenail', 'hammer-toe'),
		says: () =>
			'Lifts the toe box: one end runs from the lowest hole on the big-toe side straight across ' +
			'to the top hole of the other side; the other end ladders through the rest. Pulling the ' +
			'first end lifts the upper off the toe.',
		limits: `${bootLimits} It does not make up for a boot that is short or shallow.`,
		against: [numb],
		basis: basis('toe lift lacing'),
	},
	{
		id: 'parallel',
		name: 'Parallel bars',
		sided: false,
		when: (f) =>
			f.wished('soft-upper').length > 0 && f.wished('wide-fitting').length > 0
				? f.now(undefined, 'interdigital-neuroma', 'metatarsalgia')
				: [],
		says: () =>
			'Even and loose all over: straight bars across each row, the rise hidden along the sides.',
		limits: bootLimits,
		against: [numb],
		basis: basis('parallel lacing'),
	},
	{
		id: 'two-zone',
		name: 'Two laces',
		sided: false,
		when: (f) =>
			f.wished('wide-fitting').length > 0
				? [...narrowHeel(f, 'left'), ...narrowHeel(f, 'right')]
				: [],
		says: () =>
			'Narrow heel and broad forefoot: one lace for the lower rows, left loose, and a second ' +
			'for the upper rows, drawn tight.',
		limits: bootLimits,
		against: [numb],
		basis: (f) => f.protocol.basis('two laces', 'footwear.narrowHeelRatio'),
	},
	{
		id: 'narrow-foot',
		name: 'Drawn in for a narrow foot',
		sided: false,
		when: (f) => f.unwished('wide-fitting'),
		says: () =>
			'Draws the upper in: use the outermost holes where there are two rows, and tighten the ' +
			'middle rows first.',
		limits: bootLimits,
		against: [numb],
		basis: basis('narrow-foot lacing'),
	},
	{
		id: 'midfoot-lock',
		name: 'Midfoot lock',
		sided: false,
		when: (f) => f.now(undefined, 'flexible-flatfoot-pain', 'hypermobility'),
		says: () =>
			"Holds the midfoot: an extra turn of the knot (a surgeon's knot) at the third row, then " +
			'lace on.',
		limits: bootLimits,
		against: [
			{
				conditions: ['cavus-foot-pain'],
				says: 'High arch with pain: the knot presses on the instep.',
			},
			numb,
		],
		basis: basis('midfoot lock'),
	},
]
