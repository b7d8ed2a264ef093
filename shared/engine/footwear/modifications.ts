/**
 * Changes to a boot or trainer, chosen by findings. One row each; heights and limits are common
 * practice, no source, unless a row says otherwise.
 */
import { need } from '../plain/need.ts'
import type { WorkRow } from './work.ts'

const feetAtRisk = {
	conditions: ['neuropathy', 'previous-foot-ulcer', 'diabetes'],
	says: 'Feet at risk: no added edge, and look at the skin after the first hours of wear.',
} as const

export const modificationRows: readonly WorkRow[] = [
	{
		id: 'heel-raise',
		name: 'Heel raise',
		sided: false,
		when: (facts) => facts.raise?.because ?? [],
		says: ({ raise }) =>
			`A ${need(raise, 'the heel raise').mm} mm heel raise under the liner of both shoes, the ` +
			'same in boots and trainers.',
		limits:
			'Check that the counter still holds the heel and the collar does not rub; once free of ' +
			'symptoms for 4 to 6 weeks, lower it by 2 to 3 mm every 2 weeks.',
		against: [
			{
				conditions: ['posterior-ankle-impingement'],
				says: 'Impingement at the back of the ankle: a raise presses there.',
			},
			{
				conditions: ['sesamoid-pain', 'metatarsalgia', 'patellofemoral-pain'],
				says:
					'A raise puts more load on the forefoot and the front of the knee: keep it low ' +
					'and watch for pain there.',
			},
		],
		basis: (facts) => facts.protocol.basis('heel raise in the boot', 'ankle.raiseWarnMm'),
	},
	{
		id: 'stud-first',
		name: 'Stud under the first joint',
		sided: true,
		when: (facts, side) => [
			...facts.plantarflexedFirstRay(side),
			...facts.nowOnSideOrUnsided(
				side,
				'sesamoid-pain',
				'first-mtp-osteoarthritis',
				'hallux-limitus',
				'turf-toe',
			),
		],
		says: () =>
			'Find the first joint on the sole with the foot inside; where a stud stands under it, ' +
			'take it out, lower it, or choose a sole with studs elsewhere.',
		limits:
			'A moulded stud can be cut down, not moved, and not below the thickness of the plate; ' +
			'grip is lost there. Check the rules of the competition.',
		against: [],
	},
	{
		id: 'stud-fifth',
		name: 'Stud under the fifth metatarsal',
		sided: true,
		when: (facts, side) =>
			facts.nowOnSideOrUnsided(
				side,
				'fifth-metatarsal-stress-fracture',
				'bunionette',
				'fifth-metatarsal-apophysitis',
			),
		says: () =>
			'Find the outer border on the sole with the foot inside; have a stud under the fifth ' +
			'metatarsal taken out or lowered, or choose another sole.',
		limits:
			'Taking away an outer stud narrows the base in cutting: watch for rolling over the outer ' +
			'edge.',
		against: [
			{
				conditions: ['lateral-ankle-instability'],
				says: 'An ankle that gives way: do not narrow the outer base; choose another sole.',
			},
		],
	},
	{
		id: 'stretch-ball',
		name: 'Stretching at the ball',
		sided: false,
		when: (facts) => facts.wished('wide-fitting'),
		says: (facts) =>
			`Where the width is short by up to ${facts.protocol.value('footwear.stretchMaxMm')} mm and ` +
			'the upper is not a firm synthetic, stretch over a last at the ball.',
		limits:
			'Not across a seam or a glued edge, and not the length: a short boot is not stretched, it ' +
			'is changed.',
		against: [],
		basis: (facts) => facts.protocol.basis('stretching', 'footwear.stretchMaxMm'),
	},
	{
		id: 'spot-stretch',
		name: 'Spot stretch over the joint',
		sided: true,
		when: (facts, side) =>
			facts.nowOnSideOrUnsided(side, 'hallux-valgus', 'bunionette', 'hammer-toe'),
		says: () => 'Ball-and-ring stretch over the sore joint, marked with the foot in the boot.',
		limits: 'Soft uppers only; a bonded film may crack.',
		against: [],
	},
	{
		id: 'collar-pad',
		name: 'Padding beside the tendon',
		sided: true,
		when: (facts, side) =>
			facts.nowOnSideOrUnsided(side, 'achilles-insertional', 'haglund-deformity'),
		says: () =>
			'Two strips of padding beside the tendon, none over it, or soften the counter at its top ' +
			'edge.',
		limits: 'Takes up heel width and pushes the foot forward: check toe room again.',
		against: [feetAtRisk],
	},
	{
		id: 'tongue-pad',
		name: 'Tongue pad',
		sided: false,
		when: (facts) => facts.unwished('wide-fitting'),
		says: () => 'A pad under the tongue takes up volume over the instep and holds the heel back.',
		limits: 'Not where the top of the foot is sore or a high instep already fills the boot.',
		against: [
			{
				conditions: ['cavus-foot-pain'],
				says: 'High arch with pain: a tongue pad presses on the instep.',
			},
			feetAtRisk,
		],
	},
	{
		id: 'liner-swap',
		name: 'Liner swap',
		sided: false,
		when: (facts) => facts.wished('removable-liner', 'full-length-cushioning'),
		says: () =>
			'Where the liner comes out, change it for one of equal thickness that cushions, or take ' +
			'it out to make room for the insert.',
		limits:
			'A thicker liner takes depth over the toes and holds the heel less deeply: fit again with ' +
			'it inside.',
		against: [],
	},
	{
		id: 'forefoot-plate',
		name: 'Stiffening plate under the liner',
		sided: true,
		when: (facts, side) => [
			...facts.nowOnSideOrUnsided(side, 'first-mtp-osteoarthritis', 'turf-toe'),
			...(facts.posture[side].firstMtp === 'structural-limit'
				? [{ measure: `First MTP, ${side}`, value: 'structural limit' }]
				: []),
		],
		says: () => 'A thin carbon plate of 1 to 2 mm under the liner limits the bend of the big toe.',
		limits:
			'Costs push-off; trial in adults of about 57 years, carried over to players. Trim it ' +
			'clear of the edge of the boot.',
		against: [
			{
				conditions: ['calcaneal-apophysitis', 'achilles-midportion', 'achilles-insertional'],
				says: 'A stiff forefoot asks more of the calf: bring it in by steps.',
			},
		],
		basis: () => ({
			rule: 'stiffening plate',
			source: 'Munteanu 2021 (adults, about 57 years: pain 6.66 of 100 better, 0.65 to 12.67)',
			strength: 'trial',
		}),
	},
]
