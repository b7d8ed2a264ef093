/** Predicted adult stature of a visit, with the finding that says so or why not. */
import { type Finding, reading } from '../findings/finding.ts'
import { exactly, type Formula, over, quantity, times } from '../findings/formula.ts'
import { commonPractice } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { type AdultStatureInput, khamisRocheCm } from './adult-stature.ts'
import { growthFinding } from './says.ts'

/** The row of the error within which nine predictions in ten lie, for this player's sex. */
export const adultErrorKey = ({ player }: Pick<Visit, 'player'>): ThresholdKey =>
	player.sex === 'male' ? 'growth.adultStatureErrorBoysCm' : 'growth.adultStatureErrorGirlsCm'

/** Share of the adult stature, %; both in cm. */
export const shareOfAdult = (statureCm: number, adultCm: number): Formula =>
	over(times(exactly(100), quantity(statureCm, 1)), quantity(adultCm, 1))
/**
 * The age at which the Khamis-Roche table is read. Judged as shown, in hundredths of a year: a
 * birthday counts,
 * although days / 365.25 may fall a thousandth short of it or past it.
 * @returns years within the table, or undefined outside it
 */
function tableAgeYears(ageYears: number, protocol: Protocol): number | undefined {
	const min = protocol.value('growth.adultStatureAgeMin')
	const max = protocol.value('growth.adultStatureAgeMax')
	const shown = rounded(ageYears, 2)
	return shown < min || shown > max ? undefined : Math.min(max, Math.max(min, ageYears))
}
/** What the equation asks for; undefined where a measure is missing or the age is outside it. */
export function adultStatureInput(
	visit: Visit,
	ageYears: number,
	protocol: Protocol,
): AdultStatureInput | undefined {
	const { statureCm, massKg } = bodySize(visit)
	const { motherStatureCm: motherCm, fatherStatureCm: fatherCm, parentStatures } = visit.body ?? {}
	const tableAge = tableAgeYears(ageYears, protocol)
	if (tableAge === undefined || statureCm === undefined || massKg === undefined) return undefined
	if (motherCm === undefined || fatherCm === undefined) return undefined
	return {
		sex: visit.player.sex,
		ageYears: tableAge,
		statureCm,
		massKg,
		motherCm,
		fatherCm,
		reported: parentStatures === 'reported',
	}
}
const inputs = ['statureCm', 'massKg', 'motherStatureCm', 'fatherStatureCm'] as const
/** Says which measures are missing; undefined where none is. */
function missingFinding({ player, body }: Visit, protocol: Protocol): Finding | undefined {
	const lacking = inputs.filter((measure) => body?.[measure] === undefined)
	if (lacking.length === 0) return undefined
	return growthFinding(
		state('growth.adult-stature-missing', { lacking }),
		'note',
		[],
		protocol.basis('Khamis-Roche inputs', adultErrorKey({ player })),
	)
}
function outsideAgesFinding(ageYears: number, protocol: Protocol): Finding {
	const min = protocol.value('growth.adultStatureAgeMin')
	const max = protocol.value('growth.adultStatureAgeMax')
	const shownAge = rounded(ageYears, 2)
	return growthFinding(
		state('growth.adult-stature-age', { ageYears: shownAge, min, max }),
		'note',
		[{ measure: 'ageYears', value: shownAge, unit: 'years' }],
		protocol.basis(
			'ages of the Khamis-Roche table',
			shownAge < min ? 'growth.adultStatureAgeMin' : 'growth.adultStatureAgeMax',
		),
	)
}
function predictionFinding(
	visit: Visit,
	rawCm: number,
	statureCm: number,
	protocol: Protocol,
): Finding {
	const heldCm = Math.max(rawCm, statureCm)
	const errorCm = protocol.value(adultErrorKey(visit))
	const predictedCm = rounded(heldCm, 0)
	const parents = visit.body?.parentStatures ?? 'not-recorded'
	const held = rawCm < statureCm
	return growthFinding(
		state('growth.adult-stature', { predictedCm, errorCm, held, parents }),
		'note',
		[
			reading('predictedAdultStatureCm', rawCm, 'cm'),
			reading('lowerBoundCm', heldCm - errorCm, 'cm'),
			reading('upperBoundCm', heldCm + errorCm, 'cm'),
		],
		protocol.basis('Khamis-Roche, weights of the 1995 erratum', adultErrorKey(visit)),
	)
}
/** What a doctor expects stands before what the equation gives; its error is not known. */
function enteredFinding(enteredCm: number, statureCm: number | undefined): Finding {
	const held = statureCm !== undefined && enteredCm < statureCm
	return growthFinding(
		state('growth.adult-stature-entered', { enteredCm, held }),
		'note',
		[reading('adultStatureCm', enteredCm, 'cm')],
		{ rule: 'expected adult stature as entered', ...commonPractice },
	)
}
/** The equation's own error; of a stature that was entered none is known. */
export const hasKnownError = ({ body }: Visit): boolean => body?.adultStatureCm === undefined
/**
 * Predicted adult stature in cm, never below the present one, with the finding that says so; absent
 * where it cannot be computed, with a finding that says why.
 */
export function adultStature(
	visit: Visit,
	ageYears: number,
	protocol: Protocol,
): { predictedCm?: number; findings: Finding[] } {
	const enteredCm = visit.body?.adultStatureCm
	const { statureCm } = bodySize(visit)
	if (enteredCm !== undefined)
		return {
			predictedCm: Math.max(enteredCm, statureCm ?? 0),
			findings: [enteredFinding(enteredCm, statureCm)],
		}
	const missing = missingFinding(visit, protocol)
	if (missing) return { findings: [missing] }
	const input = adultStatureInput(visit, ageYears, protocol)
	const rawCm = input && khamisRocheCm(input)
	if (!input || rawCm === undefined) return { findings: [outsideAgesFinding(ageYears, protocol)] }
	return {
		predictedCm: Math.max(rawCm, input.statureCm),
		findings: [predictionFinding(visit, rawCm, input.statureCm, protocol)],
	}
}
