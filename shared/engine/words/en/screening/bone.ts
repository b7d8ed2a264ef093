/** Bone stress, bone pain and lumps, and a limp without a known reason. */
import { sentence } from '../../sentence.ts'
import { amount, listed, number, term } from '../format.ts'
import { noSport } from './no-sport.ts'

/** The bone by its term; left out where none was named. */
type Bone = { site?: string }
const at = ({ site }: Bone): string => (site === undefined ? '' : ` (${term(site)})`)
const noReassurance =
	' This does not say that nothing is wrong: stop and come back if pain stays, worsens, or comes ' +
	'at night.'
const notWell = (): string =>
	'Nothing today points to a cracked bone, but we cannot be sure. Stop and come back if the pain ' +
	'stays or gets worse. Come back if it hurts at night.'

export type LimpSign =
	| 'fever'
	| 'no-weight-bearing'
	| 'severe-pain-on-movement'
	| 'night-waking'
	| 'bony-lump'
/** The signs that hold, where one does. */
const withSigns = (signs: readonly LimpSign[]): string =>
	signs.length > 0 ? ` (${listed(signs.map(term))})` : ''

export const boneSentences = {
	'screening.bone-stress-hip': sentence({
		clinician: () =>
			'Bone stress injury of the hip neck suspected: no weight on the leg, no hop test, emergency ' +
			'department the same day.',
		player: () =>
			'Go to the emergency department today. The bone at your hip may be starting to crack. Put no ' +
			'weight on the leg.',
		guardian: () =>
			'Go to the emergency department today. The bone at the hip may be starting to crack. Put no ' +
			'weight on the leg.',
		doctor: () =>
			'Suspected bone stress injury of the femoral neck; non-weight-bearing, please assess today.',
		coach: noSport,
	}),
	'screening.bone-stress-high': sentence<Bone>({
		clinician: (bone) =>
			`Bone stress injury at a high-risk site${at(bone)} suspected: stop impact, no weight on the ` +
			'foot, MRI or CT. A normal plain film does not rule it out.',
		player: () =>
			'Stop running and jumping, and put no weight on this foot. A bone may be starting to crack. ' +
			'It needs a scan.',
		guardian: () =>
			'No running or jumping, and no weight on this foot. A bone may be starting to crack. It ' +
			'needs a scan.',
		doctor: (bone) =>
			`Suspected bone stress injury at a high-risk site${at(bone)}; please arrange MRI or CT. ` +
			'Non-weight-bearing meanwhile.',
		coach: noSport,
	}),
	'screening.bone-stress-high-not-met': sentence({
		clinician: () => `Bone stress rule for a high-risk site not met.${noReassurance}`,
		player: notWell,
	}),
	'screening.bone-stress-low-imaging': sentence<Bone & { weeks: number }>({
		clinician: ({ weeks, ...bone }) =>
			`Focal bone pain${at(bone)} with rest pain, a painful hop or more than ` +
			`${amount(weeks, 'weeks')} of pain: stop impact and arrange imaging. A normal plain film does ` +
			'not rule out a bone stress injury.',
		player: () =>
			'Stop running and jumping. One spot on the bone hurts in a way that needs a picture.',
		guardian: () =>
			'No running or jumping. One spot on the bone hurts in a way that needs a picture.',
		doctor: ({ weeks, ...bone }) =>
			`Focal bone pain${at(bone)} with rest pain, a painful hop or more than ` +
			`${amount(weeks, 'weeks')} of pain; imaging for bone stress injury, please.`,
		coach: noSport,
	}),
	'screening.bone-stress-rest-pain': sentence<Bone & { minor: boolean; hours: number }>({
		clinician: ({ minor, hours, ...bone }) =>
			`Bone pain${at(bone)} at night or at rest: no hop test, no impact, arrange imaging` +
			`${minor ? `; in a young player ask for an X-ray within ${amount(hours, 'h')}` : ''}.`,
		player: () => 'Stop running and jumping. Bone pain at night or at rest needs a picture soon.',
		guardian: () => 'No running or jumping. Bone pain at night or at rest needs a picture soon.',
		doctor: ({ minor, hours, ...bone }) =>
			`Bone pain${at(bone)} at night or at rest; imaging, please` +
			`${minor ? `, in this young player a radiograph within ${amount(hours, 'h')}` : ''}.`,
		coach: noSport,
	}),
	'screening.bone-stress-low': sentence<Bone & { weeks: number }>({
		clinician: ({ weeks, ...bone }) =>
			`Bone stress injury${at(bone)} is possible (no high-risk site named): relative rest without ` +
			`impact, write to the doctor, review in ${amount(weeks, 'weeks')}.`,
		player: ({ weeks }) =>
			'Stop running and jumping for now. The bone may be sore from too much load. ' +
			`We look at it again in ${amount(weeks, 'weeks')}.`,
		guardian: ({ weeks }) =>
			'No running or jumping for now. The bone may be sore from too much load. ' +
			`We look at it again in ${amount(weeks, 'weeks')}.`,
		doctor: ({ weeks, ...bone }) =>
			`Possible bone stress injury${at(bone)}; no impact, review here in ${amount(weeks, 'weeks')}.`,
		coach: noSport,
	}),
	'screening.bone-stress-low-not-met': sentence({
		clinician: () => `Bone stress rule not met.${noReassurance}`,
		player: notWell,
	}),
	'screening.hop-tested': sentence<{ site?: string }>({
		clinician: ({ site }) =>
			'Do not repeat the hop test: ' +
			(site === undefined
				? 'there is pain at night or at rest.'
				: `${term(site)} is a high-risk site.`),
	}),
	'screening.bone-site': sentence<{ highRisk: number; listed: number }>({
		clinician: ({ highRisk, listed: all }) =>
			`Name the bone: ${number(highRisk)} of the ${number(all)} listed sites are high risk and ` +
			'change what to do.',
	}),
	'screening.limp-signs': sentence<{ signs: readonly LimpSign[] }>({
		clinician: ({ signs }) =>
			`Limp with a warning sign${withSigns(signs)}: hospital the same day. An infected joint is an ` +
			'emergency for the bone surgeons.',
		player: () =>
			'Go to the hospital today. Your limp comes with a warning sign. Put no weight on the leg.',
		guardian: () =>
			'Go to the hospital today. The limp comes with a warning sign. Put no weight on the leg.',
		doctor: ({ signs }) =>
			`Limp with a warning sign${withSigns(signs)}; septic arthritis to be excluded today.`,
		coach: noSport,
	}),
	'screening.limp-signs-not-met': sentence({
		clinician: () =>
			'None of the limp warning signs recorded. Come back the same day if fever, night pain or ' +
			'refusal to bear weight appears.',
		player: () =>
			'Come back the same day if you get a fever or pain at night. Come back too if you cannot ' +
			'stand on the leg.',
		guardian: () =>
			'Come back the same day if a fever or pain at night comes. Come back too if the player cannot ' +
			'stand on the leg.',
	}),
	'screening.limp-long': sentence<{
		minor: boolean
		unassessedDays: number
		undiagnosedDays: number
	}>({
		clinician: ({ minor, unassessedDays, undiagnosedDays }) =>
			`Limp for more than ${amount(unassessedDays, 'days')} without an examination, or ` +
			`${amount(undiagnosedDays, 'days')} without a diagnosis: have it examined` +
			`${minor ? ' the same day' : ''}.`,
		player: ({ minor }) =>
			`See a doctor${minor ? ' today' : ''} about your limp. It has lasted too long without a ` +
			'known reason.',
		guardian: ({ minor }) =>
			`A doctor has to look at the limp${minor ? ' today' : ''}. It has lasted too long without a ` +
			'known reason.',
		doctor: ({ unassessedDays, undiagnosedDays }) =>
			`Limp for more than ${amount(unassessedDays, 'days')} without an examination, or ` +
			`${amount(undiagnosedDays, 'days')} without a diagnosis.`,
		coach: noSport,
	}),
	'screening.limp-hip': sentence({
		clinician: () =>
			'Limp with hip, groin, thigh or knee pain at this age: a slipped growth plate of the hip is ' +
			'suspected. No weight on the leg (crutches or chair), emergency department or on-call ' +
			'orthopaedics the same day, however long it has lasted. Films of both hips.',
		player: () =>
			'Go to the emergency department today. The growing part of your hip bone may have slipped. ' +
			'Put no weight on the leg: use crutches or a chair.',
		guardian: () =>
			'Go to the emergency department today. The growing part of the hip bone may have slipped. ' +
			'Put no weight on the leg: use crutches or a chair.',
		doctor: () =>
			'Suspected slipped upper femoral epiphysis; non-weight-bearing, please assess today with ' +
			'radiographs of both hips.',
		coach: noSport,
	}),
	'screening.bone-pain-unexplained': sentence<{ minor: boolean; hours: number }>({
		clinician: ({ minor, hours }) =>
			'Unexplained bone pain or bony swelling: through the doctor the same day' +
			`${minor ? `, an X-ray within ${amount(hours, 'h')}` : ''}. That it does not hurt at night is ` +
			'no reassurance.',
		player: ({ minor, hours }) =>
			'Call your doctor today. Bone pain without a reason needs a look' +
			`${minor ? `, with an X-ray within ${amount(hours, 'h')}` : ''}.`,
		guardian: ({ minor, hours }) =>
			'Call the doctor today. Bone pain without a reason needs a look' +
			`${minor ? `, with an X-ray within ${amount(hours, 'h')}` : ''}.`,
		doctor: ({ minor, hours }) =>
			'Unexplained bone pain or bony swelling' +
			`${minor ? `; radiograph within ${amount(hours, 'h')}, please` : ''}.`,
		coach: noSport,
	}),
	'screening.bone-pain-persistent': sentence<{ minor: boolean; hours: number }>({
		clinician: ({ minor, hours }) =>
			'Bone pain on most days for two weeks or more: through the doctor' +
			`${minor ? `, a blood count within ${amount(hours, 'h')}` : ''}.`,
		player: ({ minor, hours }) =>
			'See your doctor about the bone pain. It has lasted too long without a reason.' +
			`${minor ? ` A blood test is done within ${amount(hours, 'h')}.` : ''}`,
		guardian: ({ minor, hours }) =>
			'See the doctor about the bone pain. It has lasted too long without a reason.' +
			`${minor ? ` A blood test is done within ${amount(hours, 'h')}.` : ''}`,
		doctor: ({ minor, hours }) =>
			'Bone pain on most days for two weeks or more' +
			`${minor ? `; blood count within ${amount(hours, 'h')}, please` : ''}.`,
		coach: noSport,
	}),
	'screening.lump': sentence<{ minor: boolean; hours: number; weeks: number }>({
		clinician: ({ minor, hours, weeks }) =>
			'A lump that grows: ultrasound through the doctor, within ' +
			`${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}.`,
		player: ({ minor, hours, weeks }) =>
			'The growing lump needs a picture, to know what it is. A doctor arranges it within ' +
			`${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}.`,
		doctor: ({ minor, hours, weeks }) =>
			`Enlarging lump; ultrasound within ${minor ? amount(hours, 'h') : amount(weeks, 'weeks')}, ` +
			'please.',
		coach: noSport,
	}),
}
