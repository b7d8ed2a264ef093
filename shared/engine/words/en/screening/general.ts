/** The general questions, one yes or no each. */
import { sentence } from '../../sentence.ts'
import { amount, count, plural } from '../format.ts'
import { infectedJoint } from './infected-joint.ts'
import { noSport } from './no-sport.ts'

const clotToday =
	'Suspected deep vein thrombosis of the leg: same-day assessment, whatever the score.'
export const generalSentences = {
	'screening.nightPain': sentence<{ minor: boolean; hours: number }>({
		clinician: ({ minor, hours }) =>
			'Pain at night or at rest: arrange imaging and stop impact until it is explained.' +
			(minor ? ` In a young player ask for an X-ray within ${amount(hours, 'h')}.` : ''),
		player: () =>
			'Stop running and jumping for now. Pain at night or at rest needs a picture of the bone ' +
			'first. See a doctor soon to arrange it.',
		guardian: () =>
			'No running or jumping for now. Pain at night or at rest needs a picture of the bone ' +
			'first. See a doctor soon to arrange it.',
		doctor: ({ minor, hours }) =>
			'Pain at night or at rest; please consider imaging' +
			`${minor ? `, in this young player a radiograph within ${amount(hours, 'h')}` : ''}.`,
		coach: noSport,
	}),
	'screening.fever': sentence({
		clinician: () => 'Fever or generally unwell with a painful limb: medical review the same day.',
		player: () =>
			'See a doctor today. A fever with a sore leg or foot can mean an infection. Rest until then.',
		doctor: () =>
			'Fever or systemically unwell with a painful limb; infection to be excluded today.',
		coach: noSport,
	}),
	'screening.reducedSensation': sentence({
		clinician: () =>
			'Reduced sensation in the feet: write to the doctor, test with a monofilament; no new ' +
			'footwear without review.',
		player: () => 'Your feet feel less than they should, so a doctor should check them.',
		guardian: () => 'The feet feel less than they should, so a doctor should check them.',
		doctor: () => 'Reduced sensation or paraesthesia in the feet; cause not known to us.',
	}),
	'screening.newWeakness': sentence({
		clinician: () => 'New weakness, foot drop or saddle numbness: emergency department now.',
		player: () =>
			'Go to the emergency department now. New weakness or numbness can mean a trapped nerve. ' +
			'Do not drive yourself.',
		guardian: () =>
			'Go to the emergency department now. New weakness or numbness can mean a trapped nerve.',
		doctor: () =>
			'New weakness, foot drop or saddle anaesthesia; compression of cord, cauda equina or ' +
			'nerve to be excluded as an emergency.',
		coach: noSport,
	}),
	'screening.hotSwollenJoint': infectedJoint,
	'screening.spreadingInfection': sentence({
		clinician: () =>
			'Spreading skin infection: medical review the same day; emergency department if ' +
			'generally ill.',
		player: () =>
			'See a doctor today. The skin infection is spreading. If you feel ill or shiver, go to ' +
			'the emergency department now.',
		guardian: () =>
			'See a doctor today. The skin infection is spreading. If the player feels ill or shivers, go ' +
			'to the emergency department now.',
		doctor: () => 'Spreading skin infection or discharge; review today.',
		coach: noSport,
	}),
	'screening.calfSuspicion': sentence({
		clinician: () =>
			'A clot in the leg is suspected: medical review the same day, whatever the score.',
		player: () =>
			'See a doctor today. A swollen, sore calf can be a blood clot. Do not rub or stretch it.',
		doctor: () => clotToday,
		coach: noSport,
	}),
	'screening.breathlessOrChestPain': sentence({
		clinician: () => 'Breathless, chest pain, coughing blood or collapse: emergency services now.',
		player: () =>
			'Call the emergency number now. Trouble breathing or chest pain cannot wait. Sit down ' +
			'and stay with somebody.',
		guardian: () =>
			'Call the emergency number now. Trouble breathing or chest pain cannot wait. Let the ' +
			'player sit down, and stay there.',
		doctor: () =>
			'Breathlessness, chest pain, haemoptysis or collapse; pulmonary embolism to be excluded ' +
			'as an emergency.',
		coach: noSport,
	}),
	'screening.achillesRuptureSuspected': sentence({
		clinician: () =>
			'Achilles rupture suspected: same-day emergency department, ankle supported with the ' +
			'toes down, no insert.',
		player: () =>
			'Go to the emergency department today. Your heel cord may be torn. Keep your toes ' +
			'pointed down and do not stretch it.',
		guardian: () =>
			'Go to the emergency department today. The heel cord may be torn. The toes stay pointed down, ' +
			'and nobody stretches it.',
		doctor: () =>
			'Suspected rupture of the Achilles tendon; supported in plantarflexion, please assess today.',
		coach: noSport,
	}),
	'screening.syndesmosisSuspected': sentence({
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
	'screening.lisfrancSuspected': sentence({
		clinician: () =>
			'Midfoot ligament injury suspected: weight-bearing films of both feet or CT; no weight on ' +
			'the foot meanwhile.',
		player: () =>
			'Keep your weight off this foot. A band in the middle of it may be torn. It needs ' +
			'pictures before you play.',
		guardian: () =>
			'No weight on this foot. A band in the middle of it may be torn. It needs pictures before any play.',
		doctor: () =>
			'Suspected Lisfranc injury; weight-bearing radiographs of both feet or CT, please. ' +
			'Non-weight-bearing meanwhile.',
		coach: noSport,
	}),
	'screening.boneStressHighRisk': sentence({
		clinician: () =>
			'Bone stress injury at a high-risk site suspected: stop impact, no weight on the foot, MRI ' +
			'or CT. A normal plain film does not rule it out.',
		player: () =>
			'Stop running and jumping, and keep your weight off this foot. A bone may be starting to ' +
			'crack. It needs a scan.',
		guardian: () =>
			'No running or jumping, and no weight on this foot. A bone may be starting to crack. It needs ' +
			'a scan.',
		doctor: () =>
			'Suspected bone stress injury at a high-risk site; please arrange MRI or CT. ' +
			'Non-weight-bearing meanwhile.',
		coach: noSport,
	}),
	'screening.boneStressLowRisk': sentence<{ weeks: number }>({
		clinician: ({ weeks }) =>
			'Bone stress injury at a low-risk site suspected: stop impact, write to the doctor, ' +
			`review in ${amount(weeks, 'weeks')}.`,
		player: ({ weeks }) =>
			'Stop running and jumping for now. A bone may be tired and sore from load. ' +
			`We look at it again in ${amount(weeks, 'weeks')}.`,
		guardian: ({ weeks }) =>
			'No running or jumping for now. A bone may be tired and sore from load. ' +
			`We look at it again in ${amount(weeks, 'weeks')}.`,
		doctor: ({ weeks }) =>
			'Suspected bone stress injury at a low-risk site; no impact, review here in ' +
			`${amount(weeks, 'weeks')}.`,
		coach: noSport,
	}),
	'screening.limpUnexplained': sentence<{ minor: boolean }>({
		clinician: ({ minor }) =>
			'Limp for more than a week without a diagnosis: have it examined' +
			`${minor ? ' the same day' : ''}.`,
		player: ({ minor }) =>
			minor
				? 'See a doctor today. A limp that lasts needs a reason. Do not run until it has one.'
				: 'See a doctor about your limp. A limp that lasts needs a reason.',
		guardian: ({ minor }) =>
			minor
				? 'See a doctor today. A limp that lasts needs a reason. No running until it has one.'
				: 'See a doctor about the limp. A limp that lasts needs a reason.',
		doctor: () => 'Limp for more than a week without a diagnosis.',
		coach: noSport,
	}),
	'screening.hipPainWithLimp': sentence<{ minor: boolean }>({
		clinician: ({ minor }) =>
			minor
				? 'Limp with pain of hip, groin, thigh or knee in a minor: no weight on the leg, seen in ' +
					'an emergency department or by orthopaedics the same day, however long it has lasted.'
				: 'Limp with pain of hip, groin, thigh or knee: have it examined.',
		player: ({ minor }) =>
			minor
				? 'Go to the emergency department today. Put no weight on the leg: use crutches or a chair.'
				: 'See a doctor about your limp. A limp with pain needs a reason.',
		guardian: ({ minor }) =>
			minor
				? 'Go to the emergency department today. Put no weight on the leg: use crutches or a chair.'
				: 'See a doctor about the limp. A limp with pain needs a reason.',
		doctor: ({ minor }) =>
			minor
				? 'Limp with hip, groin, thigh or knee pain in a minor; please assess today, non-weight-bearing.'
				: 'Limp with hip, groin, thigh or knee pain.',
		coach: noSport,
	}),
	'screening.lumpOrSwelling': sentence<{ minor: boolean; hours: number; weeks: number }>({
		clinician: ({ minor, hours, weeks }) =>
			'Unexplained or enlarging lump: imaging through the doctor, within ' +
			`${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}.`,
		player: ({ minor, hours, weeks }) =>
			'The lump needs a picture, to know what it is. A doctor arranges it within ' +
			`${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}.`,
		doctor: ({ minor, hours, weeks }) =>
			'Unexplained or enlarging lump or bony swelling; imaging within ' +
			`${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}, please.`,
		coach: noSport,
	}),
	'screening.coldPaleFoot': sentence({
		clinician: () =>
			'Cold, pale foot or no pulse: blood supply must be checked at once in an emergency ' +
			'department.',
		player: () =>
			'Go to the emergency department now. Your foot may not get enough blood. Do not wait.',
		guardian: () =>
			'Go to the emergency department now. The foot may not get enough blood. Do not wait.',
		doctor: () => 'Cold, pale or pulseless foot; acute limb ischaemia to be excluded now.',
		coach: noSport,
	}),
	'screening.exertionalTightness': sentence({
		clinician: () =>
			'Tight leg with numb foot on exercise: write to the doctor about compartment pressure; ' +
			'emergency if it does not settle.',
		player: () =>
			'Stop when your leg gets tight or your foot goes numb. A doctor should look at it. If it ' +
			'does not settle, go to the emergency department.',
		guardian: () =>
			'Sport stops when the leg gets tight or the foot goes numb. A doctor should look at it. If it ' +
			'does not settle, go to the emergency department.',
		doctor: () =>
			'Leg tightness with numbness of the foot on exertion; chronic exertional compartment ' +
			'syndrome to be considered.',
	}),
	'screening.activeFootUlcer': sentence<{ days: number }>({
		clinician: ({ days }) =>
			'Open ulcer or wound: refer to the foot protection service within ' +
			`${count(days, 'working day')}.`,
		player: () =>
			'A foot clinic must see the open sore by the next working day. Stay off this foot and keep ' +
			'the sore covered.',
		guardian: () =>
			'A foot clinic must see the open sore by the next working day. No weight on this foot, ' +
			'and keep the sore covered.',
		doctor: ({ days }) =>
			'Open ulcer or wound of the foot; foot protection service within ' +
			`${count(days, 'working day')}.`,
		coach: noSport,
	}),
	'screening.morningStiffness': sentence({
		clinician: () =>
			'Long morning stiffness, swollen toes or both heels painful: write to the doctor about ' +
			'inflammatory disease.',
		player: () =>
			'See your doctor about the stiff or swollen joints. Treatment helps most when it starts early.',
		guardian: () =>
			'See the doctor about the stiff or swollen joints. Treatment helps most when it starts early.',
		doctor: () =>
			'Prolonged morning stiffness, dactylitis or bilateral heel pain; inflammatory arthritis ' +
			'to be considered.',
	}),
	'screening.suddenLegLengthDifference': sentence({
		clinician: () =>
			'Leg-length difference that came on suddenly: write to the doctor before anything is raised.',
		player: () =>
			'One leg became shorter quickly. A doctor should find out why first. Do not put a raise in ' +
			'your shoe yet.',
		guardian: () =>
			'One leg became shorter quickly. A doctor should find out why first. Do not put a raise in ' +
			'the shoe yet.',
		doctor: () => 'Leg-length difference of sudden onset; cause not known to us.',
	}),
	'screening.cardiacOrConcussion': sentence({
		clinician: () =>
			'Fainting, palpitations in sport or a recent blow to the head: outside this assessment. ' +
			'Stop, no sport, medical review the same day; emergency services if unwell now.',
		player: () =>
			'Stop all sport and see a doctor today. This is about your heart or your head, so it comes ' +
			'first. If you feel ill now, call the emergency number.',
		guardian: () =>
			'All sport stops, and a doctor has to look today. This is about the heart or the head, so it ' +
			'comes first. If the player feels ill now, call the emergency number.',
		doctor: () =>
			'Syncope or palpitations in sport, or a recent head injury; stopped from sport, please ' +
			'assess today.',
		coach: noSport,
	}),
	'screening.rigidFlatFoot': sentence({
		clinician: () =>
			'Rigid flat foot or one-sided high arch: write to the doctor before an insert is made.',
		player: () =>
			'Your foot is stiff in its shape. A doctor should look why before we make an insert.',
		guardian: () =>
			'The foot is stiff in its shape. A doctor should look why before we make an insert.',
		doctor: () =>
			'Rigid flat foot or unilateral cavus; tarsal coalition or a neurological cause to be ' +
			'considered.',
	}),
	'screening.nothing-recorded': sentence<{ unasked: number }>({
		clinician: ({ unasked }) =>
			`No listed warning sign recorded. This is not a clearance. ${count(unasked, 'question')} ` +
			`${plural(unasked, 'was', 'were')} not asked or not completed.`,
	}),
}
