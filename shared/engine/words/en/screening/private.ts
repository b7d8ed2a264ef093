/** Pregnancy, periods, weight and medicines: each carries the topic that makes it private. */
import { sentence } from '../../sentence.ts'
import { capital, term } from '../format.ts'
import { noSport } from './no-sport.ts'

const pregnancy = { private: 'pregnancy' } as const
const medication = { private: 'medication' } as const
const lowEnergy =
	'Signs that can go with low energy availability: write to the sports physician. No score is ' +
	'made here.'
const lowEnergyToPlayer = (): string =>
	'Your body may not get enough energy for your sport. That can weaken bones. Talk to the sports ' +
	'doctor about it soon.'
const lowEnergyToGuardian = (): string =>
	'The body may not get enough energy for the sport. That can weaken bones. Talk to the sports ' +
	'doctor about it soon.'
const noLowEnergy =
	'No listed sign of low energy availability. It can be there without them: ask again each season.'

export const privateSentences = {
	'screening.pregnant': sentence({
		...pregnancy,
		clinician: () =>
			'Pregnant. Measure both feet again in the course of it and after the birth: length can ' +
			'grow, the arch can drop, and both may stay. Joints may be laxer: take instability ' +
			'seriously. A swollen or painful leg raises the suspicion of a clot. Before any X-ray or ' +
			'CT the pregnancy is told; sport with contact or falls is for her midwife or doctor to ' +
			'agree.',
		player: () =>
			'Have your feet measured again later in pregnancy and after the birth. They can get longer. ' +
			'Tell staff that you are pregnant before any X-ray. Ask your midwife or doctor which sport ' +
			'is safe. A swollen or sore leg needs a doctor the same day.',
		guardian: () =>
			'Have the feet measured again later in pregnancy and after the birth. They can get longer. ' +
			'Staff must know of the pregnancy before any X-ray. Ask the midwife or doctor which sport is ' +
			'safe. A swollen or sore leg needs a doctor the same day.',
		doctor: () =>
			'The patient is pregnant: please take this into account in the choice of imaging and in ' +
			'advice on contact sport.',
	}),
	'screening.periodsAbsent': sentence({
		private: 'periods',
		clinician: () => 'Absent periods: write to the sports physician about low energy availability.',
		player: () =>
			'Missing periods can mean too little energy for your sport. That can weaken bones. Talk to ' +
			'the sports doctor about it soon.',
		guardian: () =>
			'Missing periods can mean too little energy for the sport. That can weaken bones. Talk to ' +
			'the sports doctor about it soon.',
		doctor: () => 'Amenorrhoea, primary or secondary; low energy availability to be considered.',
	}),
	'screening.unintendedWeightLoss': sentence({
		private: 'weight',
		clinician: () => 'Weight loss or falling off the growth curve: write to the doctor.',
		player: () =>
			'Talk to your doctor about your weight or growth. It changed in a way that needs a reason.',
		guardian: () =>
			'Talk to the doctor about the weight or growth. It changed in a way that needs a reason.',
		doctor: () => 'Unintended weight loss, or falling off the growth curve; cause not known to us.',
	}),
	'screening.low-energy': sentence({
		private: 'weight',
		clinician: () => lowEnergy,
		player: lowEnergyToPlayer,
		guardian: lowEnergyToGuardian,
		doctor: () =>
			'Signs that can go with relative energy deficiency in sport; assessment is asked for. No ' +
			'score was made here.',
	}),
	'screening.low-energy-periods': sentence({
		private: 'periods',
		clinician: () => lowEnergy,
		player: lowEnergyToPlayer,
		guardian: lowEnergyToGuardian,
		doctor: () =>
			'Menstrual and other signs that can go with relative energy deficiency in sport; assessment ' +
			'is asked for. No score was made here.',
	}),
	'screening.low-energy-not-met': sentence({ private: 'weight', clinician: () => noLowEnergy }),
	'screening.low-energy-periods-not-met': sentence({
		private: 'periods',
		clinician: () => noLowEnergy,
	}),
	'screening.limp-weight-loss': sentence({
		private: 'weight',
		clinician: () => 'Limp with weight loss or sweats: hospital the same day.',
		player: () =>
			'See a doctor today. A limp together with weight loss or night sweats needs tests.',
		doctor: () => 'Limp with weight loss or sweats; infection and malignancy to be excluded today.',
	}),
	'screening.fluoroquinolone': sentence({
		...medication,
		clinician: () =>
			'Fluoroquinolone antibiotic: tendons, the Achilles first, can inflame or tear within two ' +
			'days of starting and for months after. No hop test, no heel rises to failure, no new ' +
			'tendon loading, stretching or change of heel height in a hurry. At the first tendon pain: ' +
			'stop loading and call the prescriber the same day.',
		player: () =>
			'Your antibiotic can make tendons weak, also for months after. Do not hop, sprint or stretch ' +
			'hard for now. If a tendon hurts, rest it and call your doctor that day. Do not stop a ' +
			'medicine on your own.',
		guardian: () =>
			'The antibiotic can make tendons weak, also for months after. No hopping, sprinting or hard ' +
			'stretching for now. If a tendon hurts, it rests and the doctor is called that day. Do not ' +
			'stop a medicine without the doctor.',
		doctor: () =>
			'Fluoroquinolone taken now or in the past months: tendon loading is held back here.',
	}),
	'screening.fluoroquinolone-tendon': sentence({
		...medication,
		clinician: () =>
			'Tendon pain with a fluoroquinolone: stop loading, support the limb, and have the ' +
			'prescriber decide about the antibiotic today.',
		player: () =>
			'Call the doctor who gave you the antibiotic today. It can tear a sore tendon. Rest that leg ' +
			'until then.',
		guardian: () =>
			'Call the doctor who gave the antibiotic today. It can tear a sore tendon. That leg rests ' +
			'until then.',
		doctor: () =>
			'Tendon pain during or after a fluoroquinolone: please review the antibiotic and the tendon ' +
			'today. Loading has been stopped.',
		coach: noSport,
	}),
	'screening.fluoroquinolone-steroid': sentence({
		...medication,
		clinician: () =>
			'Fluoroquinolone together with a corticosteroid: the combination is to be avoided because ' +
			'tendons tear more easily. Ask the prescriber.',
		player: () =>
			'Ask your doctor about your two medicines soon. Together they can weaken tendons. Do not stop ' +
			'them on your own.',
		guardian: () =>
			'Ask the doctor about the two medicines soon. Together they can weaken tendons. Do not stop ' +
			'them without the doctor.',
		doctor: () =>
			'Fluoroquinolone and systemic corticosteroid together: please review the combination, in ' +
			'view of the tendons.',
	}),
	'screening.corticosteroidLongTerm': sentence({
		...medication,
		clinician: () =>
			'Corticosteroid for long or in repeated courses: bone and tendon are weaker, and skin heals ' +
			'slowly. Image focal bone pain early; build up load slowly.',
		player: () =>
			'Your medicine can make bones and tendons weaker. Build up training slowly. Tell us early if ' +
			'one spot on a bone hurts.',
		guardian: () =>
			'The medicine can make bones and tendons weaker. Training builds up slowly. Tell us early if ' +
			'one spot on a bone hurts.',
		doctor: () => 'Systemic corticosteroid, long term or in repeated courses.',
	}),
	'screening.corticosteroidInjection': sentence({
		...medication,
		clinician: () =>
			'Corticosteroid injected near a tendon: it can be weaker for a time, and feel better than it ' +
			'is. No hop test and no heel rises to failure; agree the loading with whoever injected.',
		player: () =>
			'The injected tendon may feel better than it is. Do not hop, sprint or stretch hard on it ' +
			'yet. Ask the doctor who injected it when you may.',
		guardian: () =>
			'The injected tendon may feel better than it is. No hopping, sprinting or hard stretching on ' +
			'it yet. Ask the doctor who injected it when that may start.',
		doctor: () => 'Corticosteroid injection near a tendon in the past months.',
	}),
	'screening.steroid-bone': sentence({
		...medication,
		clinician: () =>
			'Bone pain with long-term corticosteroid: stop impact and arrange imaging now, whatever the ' +
			'site; a normal plain film does not rule out a bone stress injury.',
		player: () =>
			'Stop running and jumping. Your medicine can weaken bone, so this spot needs a scan.',
		guardian: () =>
			'No running or jumping. The medicine can weaken bone, so this spot needs a scan.',
		doctor: () =>
			'Focal bone pain on long-term corticosteroid: please arrange imaging for bone stress injury.',
		coach: noSport,
	}),
	'screening.anticoagulant': sentence({
		...medication,
		clinician: () =>
			'Anticoagulant: bleeding and bruising are greater. No sharp nail or blister work beyond what ' +
			'local rules allow; blood under a nail is not drained here but left to the doctor. A ' +
			'clot can form in spite of it: ask why it is taken.',
		player: () =>
			'You bleed and bruise more easily with your medicine. Do not cut or open nails or blisters ' +
			'yourself. After a hard knock, see a doctor the same day.',
		guardian: () =>
			'The player bleeds and bruises more easily with the medicine. Do not cut or open nails or ' +
			'blisters. After a hard knock, see a doctor the same day.',
		doctor: () => 'Takes an anticoagulant.',
	}),
	'screening.anticoagulant-injury': sentence({
		...medication,
		clinician: () =>
			'Injury of the leg or foot on an anticoagulant: bleeding into joint or muscle compartment ' +
			'can follow a small knock. Medical review the same day; emergency department if it gets ' +
			'tight, very painful or numb.',
		player: () =>
			'See a doctor today. With your medicine a small injury can bleed inside. If the leg gets ' +
			'tight, very sore or numb, go to the emergency department now.',
		guardian: () =>
			'See a doctor today. With the medicine a small injury can bleed inside. If the leg gets ' +
			'tight, very sore or numb, go to the emergency department now.',
		doctor: () =>
			'Injury of the lower limb on an anticoagulant; please exclude haematoma, haemarthrosis and ' +
			'compartment syndrome today.',
		coach: noSport,
	}),
	'screening.anticoagulant-head': sentence({
		...medication,
		clinician: () =>
			'On an anticoagulant, with fainting, palpitations or a blow to the head: emergency ' +
			'department now. After a blow to the head a CT is asked for even where the player is well.',
		player: () =>
			'Go to the emergency department now, even if you feel well. With your medicine a knock to ' +
			'the head can bleed inside. Do not drive yourself.',
		guardian: () =>
			'Go to the emergency department now, even if the player feels well. With the medicine a knock ' +
			'to the head can bleed inside.',
		doctor: () =>
			'On an anticoagulant, with syncope, palpitations or head injury: emergency assessment, CT of ' +
			'the head after a head injury.',
		coach: noSport,
	}),
	'screening.anticoagulant-nail': sentence<{ condition: string }>({
		...medication,
		clinician: ({ condition }) =>
			`Anticoagulant with ${term(condition)}: no draining or cutting here; write to the doctor ` +
			'who looks after the medicine.',
		player: () =>
			'Do not cut or open the sore spot. With your medicine it can bleed for long. Your doctor ' +
			'decides who treats it.',
		guardian: () =>
			'Do not cut or open the sore spot. With the medicine it can bleed for long. The doctor ' +
			'decides who treats it.',
		doctor: ({ condition }) =>
			`${capital(term(condition))} on an anticoagulant; no sharp treatment was done here, please advise.`,
	}),
	'screening.hop-tested-medicine': sentence({
		...medication,
		clinician: () =>
			'Do not repeat the hop test: a medicine that weakens tendon or bone is recorded.',
	}),
}
