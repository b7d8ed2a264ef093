/** Predicted adult stature of a visit, with the finding that says so or why not. */
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { khamisRocheCm } from './adult-stature.ts'
import { finding } from './says.ts'

/**
 * The age at which the Khamis-Roche table is read. Judged as shown, in hundredths of a year: a
 * birthday counts,
 * although days / 365.25 may fall a thousandth short of it or past it.
 * @returns years within the table, or undefined outside it
 */
export function tableAgeYears(ageYears: number, protocol: Protocol): number | undefined {
	const min = protocol.value('growth.adultStatureAgeMin'),
		max = protocol.value('growth.adultStatureAgeMax'),
		shown = rounded(ageYears, 2)
	return shown < min || shown > max ? undefined : Math.min(max, Math.max(min, ageYears))
}
/**
 * Predicted adult stature in cm, never below the present one; undefined where it cannot be
 * computed. Findings are added to the list given.
 */
export function adultStature(
	visit: Visit,
	ageYears: number,
	protocol: Protocol,
	findings: Finding[],
): number | undefined {
	const {
		statureCm,
		massKg,
		motherStatureCm: motherCm,
		fatherStatureCm: fatherCm,
		parentStatures,
	} = visit.body ?? {}
	const errorKey =
		visit.player.sex === 'male'
			? 'growth.adultStatureErrorBoysCm'
			: 'growth.adultStatureErrorGirlsCm'
	const lacking = [
		statureCm === undefined && 'stature',
		massKg === undefined && 'body mass',
		motherCm === undefined && "mother's stature",
		fatherCm === undefined && "father's stature",
	].filter((one) => one !== false)
	if (
		statureCm === undefined ||
		massKg === undefined ||
		motherCm === undefined ||
		fatherCm === undefined
	) {
		findings.push(
			finding(
				'growth.adult-stature-missing',
				'note',
				`Adult stature cannot be predicted: ${lacking.join(', ')} not recorded. Both parents ` +
					'are needed.',
				[],
				protocol.basis('Khamis-Roche inputs', errorKey),
			),
		)
		return undefined
	}
	const min = protocol.value('growth.adultStatureAgeMin'),
		max = protocol.value('growth.adultStatureAgeMax')
	const shownAge = rounded(ageYears, 2),
		tableAge = tableAgeYears(ageYears, protocol)
	const raw =
		tableAge === undefined
			? undefined
			: khamisRocheCm({
					sex: visit.player.sex,
					ageYears: tableAge,
					statureCm,
					massKg,
					motherCm,
					fatherCm,
					reported: parentStatures === 'reported',
				})
	if (raw === undefined) {
		findings.push(
			finding(
				'growth.adult-stature-age',
				'note',
				`Adult stature is not predicted at ${shownAge} years: the table runs from ${min} to ` +
					`${max} years.`,
				[{ measure: 'Age', value: shownAge, unit: 'years' }],
				protocol.basis(
					'ages of the Khamis-Roche table',
					shownAge < min ? 'growth.adultStatureAgeMin' : 'growth.adultStatureAgeMax',
				),
			),
		)
		return undefined
	}
	const value = Math.max(raw, statureCm)
	const error = protocol.value(errorKey)
	findings.push(
		finding(
			'growth.adult-stature',
			'note',
			`Predicted adult stature about ${rounded(value, 0)} cm, nine times in ten within ${error} ` +
				`cm.${raw < statureCm ? ' The equation gave less than the present stature, which is used instead.' : ''}${parentStatures === 'reported' ? " The parents' reported statures were adjusted for the usual overstatement." : parentStatures === undefined ? ' Whether the parents were measured or asked is not recorded: their statures are taken as measured.' : ''}`,
			[
				{ measure: 'Predicted adult stature', value: rounded(raw, 1), unit: 'cm' },
				{ measure: 'Lower bound', value: rounded(value - error, 1), unit: 'cm' },
				{ measure: 'Upper bound', value: rounded(value + error, 1), unit: 'cm' },
			],
			protocol.basis('Khamis-Roche, weights of the 1995 erratum', errorKey),
		),
	)
	return value
}
