/** What the rules of the ground say. */
import { sentence } from '../../sentence.ts'

export const groundSentences = {
	'footwear.artificial': sentence({
		clinician: () =>
			'Artificial ground: many low, evenly spread studs; soft-ground soles are unsuitable there.',
		player: () => 'On artificial ground wear many low studs. Do not wear soft-ground boots there.',
		coach: () => 'Artificial ground: many low studs, no soft-ground boots.',
	}),
	'footwear.hard-ground': sentence({
		clinician: () => 'Hard ground: more and shorter studs spread the pressure.',
		player: () => 'On hard ground more and shorter studs press less.',
		coach: () => 'Hard ground: more and shorter studs.',
	}),
	'footwear.soft-ground': sentence({
		clinician: () =>
			'Soft natural ground: a soft-ground sole with long studs; on hard or artificial ground the ' +
			'same sole presses and grips too much.',
		player: () =>
			'On soft grass wear soft-ground boots with long studs. Do not wear them on hard or ' +
			'artificial ground.',
		coach: () => 'Soft-ground boots on soft grass only.',
	}),
	'footwear.firm-ground': sentence({
		clinician: () =>
			'Firm natural or hybrid ground: a firm-ground sole, or an artificial-ground one.',
		player: () => 'On firm grass wear firm-ground or artificial-ground boots.',
		coach: () => 'Firm grass: firm-ground or artificial-ground boots.',
	}),
	'footwear.dry-hard-sole': sentence({
		clinician: () =>
			'Hard natural ground: an artificial-ground or turf sole; never soft-ground studs.',
		player: () =>
			'On hard grass wear artificial-ground or turf soles. Never wear soft-ground studs there.',
		coach: () => 'Hard grass: artificial-ground or turf soles, never soft-ground studs.',
	}),
	'footwear.third-generation': sentence({
		clinician: () =>
			'Artificial turf (3G): an artificial-ground sole; soft-ground soles are unsuitable and ' +
			'firm-ground soles only partly suited.',
		player: () =>
			'On 3G turf wear boots made for it. Never wear soft-ground boots there. Firm-ground boots ' +
			'are second best.',
		coach: () => 'Artificial turf (3G): artificial-ground boots, no soft-ground boots.',
	}),
	'footwear.sand-dressed': sentence({
		clinician: () => 'Sand-dressed artificial ground: a turf sole.',
		player: () => 'On artificial ground with sand wear turf soles.',
		coach: () => 'Artificial ground with sand: turf soles.',
	}),
	'footwear.hall': sentence({
		clinician: () => 'Hall floor: a flat indoor sole.',
		player: () => 'In a hall wear flat indoor shoes.',
		coach: () => 'Hall: flat indoor shoes.',
	}),
	'footwear.road': sentence({
		clinician: () => 'Road and gym: running shoes, never studs.',
		player: () => 'On roads and in the gym wear running shoes, never studs.',
		coach: () => 'Road and gym: running shoes, never studs.',
	}),
}
