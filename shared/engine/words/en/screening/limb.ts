/** Tendon and ligament, infection, nerves, blood supply, inflamed joints. */
import { sentence } from '../../sentence.ts'
import { amount, number } from '../format.ts'
import { infectedJoint } from './infected-joint.ts'
import { noSport } from './no-sport.ts'

export const limbSentences = {
	'screening.achilles-rupture': sentence({
		clinician: () =>
			'Achilles rupture suspected: same-day emergency department, ankle supported with the toes ' +
			'down, no insert. In the study every rupture had two or more of the three tests positive; ' +
			'walking, or even a heel rise, does not exclude it.',
		player: () =>
			'Go to the emergency department today. Your heel cord may be torn. Keep your toes pointed ' +
			'down and do not stretch it.',
		guardian: () =>
			'Go to the emergency department today. The heel cord may be torn. The toes stay pointed down, ' +
			'and nobody stretches it.',
		doctor: () =>
			'Suspected rupture of the Achilles tendon on calf squeeze, knee-bent test or palpation; ' +
			'supported in plantarflexion, please assess today.',
		coach: noSport,
	}),
	'screening.achilles-rupture-not-met': sentence({
		clinician: () =>
			'None of the three rupture tests is positive. About one rupture in five was missed at first: ' +
			'test again if push-off stays weak.',
		player: () =>
			'Nothing today points to a torn heel cord, but we cannot be sure. Come back if your push-off ' +
			'stays weak.',
		guardian: () =>
			'Nothing today points to a torn heel cord, but we cannot be sure. Come back if the push-off ' +
			'stays weak.',
	}),
	'screening.syndesmosis': sentence({
		clinician: () => 'High ankle sprain suspected: imaging, and protect in a boot meanwhile.',
		player: () =>
			'Your ankle needs a picture before you play. A band above the ankle may be torn. Wear the ' +
			'support boot until then.',
		guardian: () =>
			'The ankle needs a picture before any play. A band above the ankle may be torn. The support ' +
			'boot stays on until then.',
		doctor: () => 'Suspected syndesmosis injury; please arrange imaging. Protected in a boot.',
		coach: noSport,
	}),
	'screening.syndesmosis-not-met': sentence<{ day: number }>({
		clinician: ({ day }) =>
			'High ankle sprain rule not met. In the first day the tests miss many: examine again on ' +
			`day ${number(day)}.`,
		player: ({ day }) =>
			`Come back on day ${number(day)} after the injury. These tests can miss a sprain at first.`,
	}),
	'screening.lisfranc': sentence({
		clinician: () =>
			'Midfoot ligament injury suspected: weight-bearing films of both feet or CT, no weight on ' +
			'the foot meanwhile. Films without weight miss about one in four.',
		player: () =>
			'Put no weight on this foot. A band in the middle of it may be torn. It needs pictures ' +
			'before you play.',
		guardian: () =>
			'No weight on this foot. A band in the middle of it may be torn. It needs pictures before any play.',
		doctor: () =>
			'Suspected Lisfranc injury; weight-bearing radiographs of both feet or CT, please. ' +
			'Non-weight-bearing meanwhile.',
		coach: noSport,
	}),
	'screening.lisfranc-not-met': sentence<{ days: number }>({
		clinician: ({ days }) =>
			'Midfoot ligament rule not met. One in three to five is missed at first: examine again within ' +
			`${amount(days, 'days')} if the midfoot still hurts.`,
		player: ({ days }) =>
			`Come back within ${amount(days, 'days')} if the middle of your foot still hurts. These tests ` +
			'can miss an injury at first.',
		guardian: ({ days }) =>
			`Come back within ${amount(days, 'days')} if the middle of the foot still hurts. These tests ` +
			'can miss an injury at first.',
	}),
	'screening.lisfranc-no-weight': sentence({
		clinician: () =>
			'Midfoot injury and no weight can be borne: emergency department the same day, no weight on ' +
			'the foot.',
		player: () =>
			'Go to the emergency department today. The middle of your foot may be badly hurt. Put no ' +
			'weight on it.',
		guardian: () =>
			'Go to the emergency department today. The middle of the foot may be badly hurt. Put no ' +
			'weight on it.',
		doctor: () =>
			'Midfoot injury, unable to bear weight; please assess today for a Lisfranc injury.',
		coach: noSport,
	}),
	'screening.infected-joint': infectedJoint,
	'screening.infected-skin': sentence({
		clinician: () =>
			'Spreading infection: medical review the same day, no insert and no boot on this foot.',
		player: () =>
			'See a doctor today. The infection is spreading. Wear no boot on this foot until then.',
		guardian: () =>
			'See a doctor today. The infection is spreading. No boot on this foot until then.',
		doctor: () => 'Spreading skin infection or discharge; review today.',
		coach: noSport,
	}),
	'screening.infection-ill': sentence({
		clinician: () => 'Infection and generally ill: emergency department now.',
		player: () =>
			'Go to the emergency department now. An infection that makes you ill cannot wait. Do not ' +
			'drive yourself.',
		guardian: () => 'Go to the emergency department now. A bad infection like this cannot wait.',
		doctor: () => 'Infection of the limb and systemically unwell; sepsis to be excluded now.',
		coach: noSport,
	}),
	'screening.infected-nail': sentence<{ days: number }>({
		clinician: ({ days }) =>
			'Infected nail fold or blister: treat or refer; look again in ' +
			`${amount(days, 'days')}, and the same day if redness spreads.`,
		player: ({ days }) =>
			`We look at the sore again in ${amount(days, 'days')}. Come the same day if the redness spreads.`,
		doctor: () => 'Infected nail fold or blister, not spreading.',
	}),
	'screening.monofilament': sentence({
		clinician: () =>
			'Monofilament not felt at one or more of the three sites: protective feeling is reduced. ' +
			'Write to the doctor; no insert and no new footwear without review. Never test on callus.',
		player: () => 'Your foot did not feel every touch of the test. A doctor should look why.',
		guardian: () => 'The foot did not feel every touch of the test. A doctor should look why.',
		doctor: () =>
			'10 g monofilament not felt at one or more of three plantar sites: protective sensation is ' +
			'reduced.',
	}),
	'screening.monofilament-not-met': sentence({
		clinician: () =>
			'Monofilament felt at the three sites. The test misses about half of nerve trouble: repeat it ' +
			'if numbness is reported.',
	}),
	'screening.nerve-worse': sentence({
		clinician: () =>
			'Loss of feeling or strength that is getting worse, or saddle numbness or bladder change: ' +
			'emergency department now.',
		player: () =>
			'Go to the emergency department now. Feeling or strength is getting worse, and that cannot ' +
			'wait. Do not drive yourself.',
		guardian: () =>
			'Go to the emergency department now. Feeling or strength is getting worse, and that cannot wait.',
		doctor: () =>
			'Progressive loss of sensation or power, saddle anaesthesia or sphincter disturbance; cauda ' +
			'equina to be excluded now.',
		coach: noSport,
	}),
	'screening.pulses': sentence({
		clinician: () =>
			'Neither foot pulse is felt: write to the doctor about the blood supply, with an ankle ' +
			'pressure reading.',
		player: () =>
			'A doctor should check the blood supply of your foot. We could not feel the two pulses there.',
		guardian: () =>
			'A doctor should check the blood supply of the foot. We could not feel the two pulses there.',
		doctor: () =>
			'Neither dorsalis pedis nor posterior tibial pulse is palpable; vascular assessment, please.',
	}),
	'screening.pressure-index': sentence<{ limit: number }>({
		clinician: ({ limit }) =>
			`Ankle-brachial pressure index below ${number(limit, 2)}: write to the doctor about the blood ` +
			'supply.',
		player: () =>
			'A doctor should check the blood supply of your foot. The pressure at your ankle was low.',
		guardian: () =>
			'A doctor should check the blood supply of the foot. The pressure at the ankle was low.',
		doctor: ({ limit }) =>
			`Ankle-brachial pressure index below ${number(limit, 2)}; vascular assessment, please.`,
	}),
	'screening.rest-pain': sentence({
		clinician: () =>
			'Pain at rest in a cold or pale foot: blood supply must be checked at once in an emergency ' +
			'department.',
		player: () =>
			'Go to the emergency department now. Your foot may not get enough blood. Do not wait.',
		guardian: () =>
			'Go to the emergency department now. The foot may not get enough blood. Do not wait.',
		doctor: () => 'Rest pain in a cold or pale foot; acute limb ischaemia to be excluded now.',
		coach: noSport,
	}),
	'screening.compartment': sentence({
		clinician: () =>
			'Tight, painful leg with numb foot or foot drop now: compartment pressure, emergency ' +
			'department now.',
		player: () =>
			'Go to the emergency department now. The pressure inside your leg may be too high. Do not ' +
			'wrap or raise the leg.',
		guardian: () =>
			'Go to the emergency department now. The pressure inside the leg may be too high. Do not ' +
			'wrap or raise the leg.',
		doctor: () =>
			'Tight, painful leg with numbness or foot drop; acute compartment syndrome to be excluded now.',
		coach: noSport,
	}),
	'screening.inflammatory': sentence<{ minutes: number }>({
		clinician: ({ minutes }) =>
			`Morning stiffness over ${amount(minutes, 'min')}, both heels painful, a whole toe swollen, or ` +
			'skin, nail or eye signs: write to the doctor about inflammatory disease.',
		player: () =>
			'See your doctor about the stiff or swollen joints. Treatment helps most when it starts early.',
		guardian: () =>
			'See the doctor about the stiff or swollen joints. Treatment helps most when it starts early.',
		doctor: ({ minutes }) =>
			`Morning stiffness over ${amount(minutes, 'min')}, bilateral heel pain, dactylitis, or skin, ` +
			'nail or eye signs; inflammatory arthritis to be considered.',
	}),
}
