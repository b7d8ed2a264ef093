/**
 * Lacing by purpose. Trade practice only, no outcome data. The drawing of each is in
 * lacing-figure.ts, what it says in words/en/footwear/lacing.ts.
 */
import { reading } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import { meanOf } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { soreHeels } from './sore-heel.table.ts'
import type { Caution, WorkFacts, WorkRow } from './work.ts'

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
const reducedFeeling: Caution = {
	conditions: ['neuropathy', 'diabetes', 'previous-foot-ulcer'],
	code: 'work.caution-reduced-feeling',
}
const tradePractice = (rule: string) => () => ({
	rule,
	source: 'trade practice, no outcome data',
	strength: 'practice' as const,
})
/** Heel width and ball width of a side whose heel is narrow for its ball, where both are measured. */
function narrowHeel({ visit, protocol }: WorkFacts, side: Side): Because[] {
	const heelMm = meanOf(visit.feet?.[side]?.heelWidthMm)
	const ballMm = meanOf(visit.feet?.[side]?.ballWidthMm)
	if (heelMm === undefined || ballMm === undefined) return []
	if (heelMm / ballMm >= protocol.value('footwear.narrowHeelRatio')) return []
	return [reading('heelWidthMm', heelMm, 'mm', side), reading('ballWidthMm', ballMm, 'mm', side)]
}
const slippingHeel = ({ visit }: WorkFacts): Because[] =>
	(visit.footwear ?? [])
		.filter((pair) => pair.damage?.includes('heel-slips'))
		.map((pair) => ({ measure: 'heel-slips', value: pair.name ?? pair.id }))

export const lacingRows: readonly (WorkRow & { id: LacingId })[] = [
	{
		id: 'heel-lock',
		sided: false,
		found: (facts) => [...slippingHeel(facts), ...(facts.raise?.because ?? [])],
		// it pulls the sore heel against the counter
		never: soreHeels,
		against: [
			{
				conditions: ['anterior-ankle-impingement'],
				code: 'work.caution-lock-at-the-front',
			},
			reducedFeeling,
		],
		basis: tradePractice('heel lock'),
	},
	{
		id: 'window',
		sided: false,
		sought: ['deep-instep'],
		conditions: ['cavus-foot-pain'],
		against: [reducedFeeling],
		basis: tradePractice('window lacing'),
	},
	{
		id: 'forefoot-room',
		sided: false,
		sought: ['wide-fitting'],
		against: [reducedFeeling],
		basis: tradePractice('forefoot lacing'),
	},
	{
		id: 'toe-lift',
		sided: true,
		conditions: ['subungual-haematoma', 'ingrown-toenail', 'hammer-toe'],
		against: [reducedFeeling],
		basis: tradePractice('toe lift lacing'),
	},
	{
		id: 'parallel',
		sided: false,
		// a boot is laced in one way: even bars leave room at the front as well
		insteadOf: ['forefoot-room'],
		conditions: ['interdigital-neuroma', 'metatarsalgia'],
		onlyWithSought: ['soft-upper', 'wide-fitting'],
		against: [reducedFeeling],
		basis: tradePractice('parallel lacing'),
	},
	{
		id: 'two-zone',
		sided: false,
		// loose below and firm above: room at the front, and the narrow heel held
		insteadOf: ['forefoot-room', 'parallel'],
		found: narrowHeel,
		onlyWithSought: ['wide-fitting'],
		against: [reducedFeeling],
		basis: ({ protocol }) => protocol.basis('two laces', 'footwear.narrowHeelRatio'),
	},
	{
		id: 'narrow-foot',
		sided: false,
		avoided: ['wide-fitting'],
		against: [reducedFeeling],
		basis: tradePractice('narrow-foot lacing'),
	},
	{
		id: 'midfoot-lock',
		sided: false,
		conditions: ['flexible-flatfoot-pain', 'hypermobility'],
		against: [
			{ conditions: ['cavus-foot-pain'], code: 'work.caution-knot-on-instep' },
			reducedFeeling,
		],
		basis: tradePractice('midfoot lock'),
	},
]
