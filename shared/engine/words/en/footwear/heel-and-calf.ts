/** What the rules of the heel and the calf say. */
import { alsoTo, sentence } from '../../sentence.ts'

export const heelAndCalfSentences = {
	'footwear.growing-heel': alsoTo(
		sentence({
			clinician: () =>
				'Growing heel: raise the heel in both shoes, cushioned heel and many low studs; keep off ' +
				'hard ground in studs.',
			player: () =>
				'Raise the heel in both shoes. Wear cushioned heels and many low studs. Keep off hard ' +
				'ground in studs.',
			coach: () => 'No studs on hard ground.',
		}),
		'doctor',
	),
	'footwear.achilles-insertional': sentence({
		clinician: () =>
			'Back of the heel: a raised heel and a soft or low counter take pressure off the tendon.',
		player: () => 'A raised heel and a soft or low back press on it less.',
	}),
	'footwear.achilles-midportion': sentence({
		clinician: () => 'Achilles tendon: a raised heel lowers the demand.',
		player: () => 'A raised heel asks less of the tendon.',
	}),
	'footwear.calf-strain': sentence({
		clinician: () => 'Calf strain: a raised heel lowers the demand. No trial was found.',
		player: () => 'A raised heel asks less of your calf.',
	}),
	'footwear.hard-counter': sentence({
		clinician: () =>
			'Sore tendon or growing heel: a stiff, hard counter irritates the back of the heel. A soft ' +
			'or low counter and collar.',
		player: () => 'A stiff, hard heel cup rubs a sore heel. Look for a soft or low one.',
	}),
	'footwear.plantar-heel': sentence({
		clinician: () =>
			'Heel pain under the foot: firm heel cup, a midfoot that does not twist, some heel height.',
		player: () =>
			'Look for a firm heel cup and a middle that does not twist. Some heel height helps too.',
	}),
	'footwear.heel-collar': sentence({
		clinician: () =>
			'Bump or blister at the back of the heel: a padded collar, and no hard edge where it rubs.',
		player: () => 'The back of your heel must not rub. Look for a padded collar with no hard edge.',
	}),
	'footwear.heel-pad': sentence({
		clinician: () =>
			'Sore heel pad: a cushioned heel inside a firm cup, and more studs under the heel.',
		player: () => 'Look for a cushioned heel in a firm cup, with more studs under it.',
	}),
	'footwear.calf-lever': sentence({
		clinician: () =>
			'Achilles or calf: a forefoot that bends shortens the lever on the calf. This is belief, ' +
			'not trial evidence.',
		player: () =>
			'A front that bends may ask less of your calf. This is what people believe. It is not ' +
			'proven.',
	}),
	'footwear.calf-history': sentence({
		clinician: () => 'Achilles or calf trouble, now or before: no sudden change to a flat sole.',
		player: () => 'Do not change to a flat sole all at once.',
	}),
}
