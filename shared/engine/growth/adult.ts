/** Predicted adult stature of a visit, with the finding that says so or why not. */
import type { Finding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type AdultStatureInput, khamisRocheCm } from './adult-stature.ts'
import { finding } from './says.ts'

/** The row of the error within which nine predictions in ten lie, for this player's sex. */
export const adultErrorKey = ({ player }: Visit): ThresholdKey =>
	player.sex === 'male' ? 'growth.adultStatureErrorBoysCm' : 'growth.adultStatureErrorGirlsCm'

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
	const {
		statureCm,
		massKg,
		motherStatureCm: motherCm,
		fatherStatureCm: fatherCm,
		parentStatures,
	} = visit.body ?? {}
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
/** Says which measures are missing; undefined where none is. */
function missingFinding(visit: Visit, protocol: Protocol): Finding | undefined {
	const { statureCm, massKg, motherStatureCm, fatherStatureCm } = visit.body ?? {}
	const lacking = [
		statureCm === undefined && 'stature',
		massKg === undefined && 'body mass',
		motherStatureCm === undefined && "mother's stature",
		fatherStatureCm === undefined && "father's stature",
	].filter((measure) => measure !== false)
	if (lacking.length === 0) return undefined
	return finding(
		'growth.adult-stature-missing',
		'note',
		`Adult stature cannot be predicted: ${lacking.join(', ')} not recorded. Both parents ` +
			'are needed.',
		[],
		protocol.basis('Khamis-Roche inputs', adultErrorKey(visit)),
	)
}
function outsideAgesFinding(ageYears: number, protocol: Protocol): Finding {
	const min = protocol.value('growth.adultStatureAgeMin')
	const max = protocol.value('growth.adultStatureAgeMax')
	const shownAge = rounded(ageYears, 2)
	return finding(
		'growth.adult-stature-age',
		'note',
		`Adult stature is not predicted at ${shownAge} years: the table runs from ${min} to ` +
			`${max} years.`,
		[{ measure: 'Age', value: shownAge, unit: 'years' }],
		protocol.basis(
			'ages of the Khamis-Roche table',
			shownAge < min ? 'growth.adultStatureAgeMin' : 'growth.adultStatureAgeMax',
		),
	)
}
/** What was done about the parents' statures, in words. */
function parentWords(parentStatures: 'reported' | 'measured' | undefined): string {
	if (parentStatures === 'reported')
		return " The parents' reported statures were adjusted for the usual overstatement."
	if (parentStatures === 'measured') return ''
	return (
		' Whether the parents were measured or asked is not recorded: their statures are taken as ' +
		'measured.'
	)
}
function predictionFinding(
	visit: Visit,
	rawCm: number,
	statureCm: number,
	protocol: Protocol,
): Finding {
	const predictedCm = Math.max(rawCm, statureCm)
	const errorCm = protocol.value(adultErrorKey(visit))
	const held =
		rawCm < statureCm
			? ' The equation gave less than the present stature, which is used instead.'
			: ''
	return finding(
		'growth.adult-stature',
		'note',
		`Predicted adult stature about ${rounded(predictedCm, 0)} cm, nine times in ten within ` +
			`${errorCm} cm.${held}${parentWords(visit.body?.parentStatures)}`,
		[
			{ measure: 'Predicted adult stature', value: rounded(rawCm, 1), unit: 'cm' },
			{ measure: 'Lower bound', value: rounded(predictedCm - errorCm, 1), unit: 'cm' },
			{ measure: 'Upper bound', value: rounded(predictedCm + errorCm, 1), unit: 'cm' },
		],
		protocol.basis('Khamis-Roche, weights of the 1995 erratum', adultErrorKey(visit)),
	)
}
/**
 * Predicted adult stature in cm, never below the present one, with the finding that says so; absent
 * where it cannot be computed, with a finding that says why.
 */
export function adultStature(
	visit: Visit,
	ageYears: number,
	protocol: Protocol,
): { predictedCm?: number; findings: Finding[] } {
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
