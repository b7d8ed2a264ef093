/** A limp without a known reason. */
import { above, allOf, anyOf, not } from '../answers.ts'
import { type SignRow, signOfSide } from './sign-row.ts'
import { limpGuidelines } from './sources.ts'

export const limpSigns: readonly SignRow[] = [
	signOfSide('limp', {
		id: 'limp-signs',
		holds: (limp) =>
			anyOf(
				limp.feverInPastWeek,
				limp.cannotBearWeight,
				limp.severePainOnMovement,
				limp.nightWaking,
				limp.bonyLump,
				limp.weightLossOrSweats,
			),
		action: 'same-day',
		says:
			'Limp with a warning sign (fever, no weight bearing, severe pain on movement, night ' +
			'waking, lump, weight loss or sweats): hospital the same day. An infected joint is ' +
			'an emergency for the bone surgeons.',
		notMet:
			'None of the limp warning signs recorded. Come back the same day if fever, night pain ' +
			'or refusal to bear weight appears.',
		ground: limpGuidelines,
	}),
	signOfSide('limp', {
		id: 'limp-long',
		holds: ({ days, examinedBefore }, { protocol }) =>
			anyOf(
				above(days, protocol.value('screening.limpUndiagnosedDays')),
				allOf(above(days, protocol.value('screening.limpUnassessedDays')), not(examinedBefore)),
			),
		action: 'letter',
		minorAction: 'same-day',
		says:
			'Limp that has lasted more than a week without an examination, or two weeks without ' +
			'a diagnosis: have it examined; a growing player the same day.',
		ground: { key: 'screening.limpUnassessedDays' },
	}),
	signOfSide('limp', {
		id: 'limp-hip',
		holds: ({ hipThighKneePain }, { minor, decimalAgeYears, protocol }) =>
			allOf(
				minor && decimalAgeYears > protocol.value('screening.slippedEpiphysisOverYears'),
				hipThighKneePain,
			),
		action: 'imaging',
		says:
			'Limp with hip, thigh or knee pain at this age: a slipped growth plate of the hip ' +
			'must be looked for with films of both hips; no impact until then.',
		ground: { key: 'screening.slippedEpiphysisOverYears' },
	}),
]
