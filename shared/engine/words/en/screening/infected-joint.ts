/** A joint that may be infected, asked as a general question or found among the signs of a limb. */
import { sentence } from '../../sentence.ts'
import { noSport } from './no-sport.ts'

export const infectedJoint = sentence({
	clinician: () => 'Hot, swollen joint: an infected joint must be excluded the same day.',
	player: () =>
		'See a doctor today. A hot, swollen joint can be infected. Keep your weight off it until then.',
	guardian: () =>
		'See a doctor today. A hot, swollen joint can be infected. No weight on it until then.',
	doctor: () => 'Hot, swollen joint; septic arthritis to be excluded today.',
	coach: noSport,
})
