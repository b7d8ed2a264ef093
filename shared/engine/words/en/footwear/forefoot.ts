/** What the rules of the forefoot and the midfoot say. */
import { alsoTo, sentence } from '../../sentence.ts'
import { amount } from '../format.ts'

export const forefootSentences = {
	'footwear.sesamoid': alsoTo(
		sentence({
			clinician: () =>
				'Sesamoid pain: stiff forefoot, no stud under the first joint, some heel height but no ' +
				'steep one.',
			player: () => 'Look for a front that bends little. Have no stud under the joint.',
		}),
		'doctor',
	),
	'footwear.first-joint': alsoTo(
		sentence({
			clinician: () =>
				'Stiff first joint: a stiff forefoot plate limits its bend; depth over the joint.',
			player: () =>
				'Your big toe is stiff. A front that bends little spares it. Leave depth over the joint.',
		}),
		'doctor',
	),
	'footwear.turf-toe': alsoTo(
		sentence({
			clinician: () =>
				'Turf toe: a bendy forefoot with high grip goes with more bending back of the toe.',
			player: () =>
				'Your big toe is sprained. A soft front that grips hard can bend it back too far.',
		}),
		'doctor',
	),
	'footwear.forefoot-pain': sentence({
		clinician: () => 'Forefoot pain: more contact points and a wider forefoot spread the load.',
		player: () => 'More studs and a wider front spread the load.',
	}),
	'footwear.neuroma': sentence({
		clinician: () => 'Neuroma: width and cushioning at the ball; a tight forefoot squeezes it.',
		player: () => 'A tight front squeezes it. Look for width and a soft front.',
	}),
	'footwear.bunion': sentence({
		clinician: () => 'Bunion: soft upper, no seam over the joint, a wide last.',
		player: () =>
			'A toe joint sticks out at the side. Look for a soft upper, a wide fit and no seam over it.',
	}),
	'footwear.bunionette-stud': sentence({
		clinician: () =>
			'Bunion of the little toe: no stud and no seam under or beside the fifth head.',
		player: () => 'Keep studs and seams away from the joint of your little toe.',
	}),
	'footwear.fifth-metatarsal': alsoTo(
		sentence<{ turfShare: number }>({
			clinician: ({ turfShare }) =>
				'Fifth metatarsal stress fracture, now or before: round studs, none under the fifth ' +
				'metatarsal, a wide platform; keep the share of artificial turf below ' +
				`${amount(turfShare * 100, '%')}.`,
			player: ({ turfShare }) =>
				'You have or had a stress fracture at the outer edge of your foot. Wear round studs, and ' +
				'none under that edge. Play less than ' +
				`${amount(turfShare * 100, '%')} of your time on artificial turf.`,
			coach: ({ turfShare }) =>
				`Round studs. Less than ${amount(turfShare * 100, '%')} of the time on artificial turf.`,
		}),
		'doctor',
	),
	'footwear.fifth-apophysis': sentence({
		clinician: () =>
			'Growing base of the fifth metatarsal: width and softness at the outer border.',
		player: () => 'Look for width and softness at the outer edge.',
	}),
	'footwear.navicular': alsoTo(
		sentence({
			clinician: () =>
				'Navicular stress fracture, now or before: a midfoot that does not twist and some ' +
				'cushioning.',
			player: () =>
				'You have or had a stress fracture in the middle of your foot. Look for a middle that ' +
				'does not twist, and some cushioning.',
		}),
		'doctor',
	),
}
