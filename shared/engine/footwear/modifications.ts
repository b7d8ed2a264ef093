/**
 * Changes to a boot or trainer, chosen by findings. One row each; heights and limits are common
 * practice, no source, unless a row says otherwise. What a row says stands in words/en/work.ts.
 */
import { hasCondition } from '../conditions/query.ts'
import type { FootwearWork } from '../findings/assessment.ts'
import { need } from '../plain/need.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { firstRayReason, stiffJointReason } from './facts.ts'
import type { Caution, WorkRow } from './work.ts'

const feetAtRisk: Caution = {
	conditions: ['neuropathy', 'previous-foot-ulcer', 'diabetes'],
	code: 'work.caution-feet-at-risk',
}

const givesWay = (visit: Visit, side: FootwearWork['side']): boolean =>
	hasCondition(visit, ['lateral-ankle-instability'], side === 'both' ? {} : { side })

export const modificationRows: readonly WorkRow[] = [
	{
		id: 'heel-raise',
		sided: false,
		found: ({ raise }) => raise?.because ?? [],
		says: ({ raise }) =>
			state('work.heel-raise-in', { pairs: need(raise, 'the heel raise').pairs }),
		heldBy: ['raise'],
		// what evens the legs is not lowered again
		limits: ({ raise, protocol: { value } }) =>
			raise?.kind === 'leg-length'
				? state('work.leg-length-raise.limits')
				: state('work.heel-raise.limits', {
						freeWeeksLeast: value('footwear.raiseFreeMinWeeks'),
						freeWeeksMost: value('footwear.raiseFreeMaxWeeks'),
						stepLeastMm: value('footwear.raiseStepMinMm'),
						stepMostMm: value('footwear.raiseStepMaxMm'),
						stepWeeks: value('footwear.raiseStepWeeks'),
					}),
		against: [
			{
				conditions: ['posterior-ankle-impingement'],
				code: 'work.caution-raise-at-the-back',
			},
			{
				conditions: ['sesamoid-pain', 'metatarsalgia', 'patellofemoral-pain'],
				code: 'work.caution-raise-loads-forefoot',
			},
		],
		basis: ({ protocol }) => protocol.basis('heel raise in the boot', 'ankle.raiseWarnMm'),
	},
	{
		id: 'stud-first',
		sided: true,
		conditions: ['sesamoid-pain', 'first-mtp-osteoarthritis', 'hallux-limitus', 'turf-toe'],
		found: ({ posture }, side) => firstRayReason(posture, side, 'plantarflexed'),
		against: [],
	},
	{
		id: 'stud-fifth',
		sided: true,
		conditions: ['fifth-metatarsal-stress-fracture', 'bunionette', 'fifth-metatarsal-apophysitis'],
		// an outer stud that is taken out narrows the base of an ankle that gives way
		says: ({ visit }, side) =>
			givesWay(visit, side) ? state('work.stud-fifth-unsteady') : state('work.stud-fifth'),
		limits: ({ visit }, side) =>
			givesWay(visit, side)
				? state('work.stud-fifth-unsteady.limits')
				: state('work.stud-fifth.limits'),
		against: [],
	},
	{
		id: 'stretch-ball',
		sided: false,
		sought: ['wide-fitting'],
		says: ({ protocol }) =>
			state('work.stretch-ball', { mostMm: protocol.value('footwear.stretchMaxMm') }),
		against: [],
		basis: ({ protocol }) => protocol.basis('stretching', 'footwear.stretchMaxMm'),
	},
	{
		id: 'spot-stretch',
		sided: true,
		conditions: ['hallux-valgus', 'bunionette', 'hammer-toe'],
		against: [],
	},
	{
		id: 'collar-pad',
		sided: true,
		conditions: ['achilles-insertional', 'haglund-deformity'],
		against: [feetAtRisk],
	},
	{
		id: 'tongue-pad',
		sided: false,
		avoided: ['wide-fitting'],
		against: [
			{ conditions: ['cavus-foot-pain'], code: 'work.caution-tongue-on-instep' },
			feetAtRisk,
		],
	},
	{
		id: 'liner-swap',
		sided: false,
		heldBy: ['insert'],
		sought: ['removable-liner', 'full-length-cushioning'],
		// for a foot that needs it; growth, body and position choose a pair, and change none
		soughtBefore: 'growth',
		against: [],
	},
	{
		id: 'forefoot-plate',
		sided: true,
		heldBy: ['insert'],
		conditions: ['first-mtp-osteoarthritis', 'turf-toe'],
		found: ({ posture }, side) => stiffJointReason(posture, side),
		says: ({ protocol: { value } }) =>
			state('work.forefoot-plate', {
				leastMm: value('insert.stiffenerMinMm'),
				mostMm: value('insert.stiffenerMaxMm'),
			}),
		against: [
			{
				conditions: ['calcaneal-apophysitis', 'achilles-midportion', 'achilles-insertional'],
				code: 'work.caution-stiff-on-calf',
			},
		],
		basis: () => ({
			rule: 'stiffening plate',
			source: 'Munteanu 2021 (adults, about 57 years: pain 6.66 of 100 better, 0.65 to 12.67)',
			strength: 'trial',
		}),
	},
]
