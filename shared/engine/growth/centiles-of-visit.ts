/** Centiles of a visit's stature, mass and body mass index, and what is said of them. */
import type { GrowthResult } from '../findings/assessment.ts'
import { type Finding, reading } from '../findings/finding.ts'
import { type Formula, over, quantity, squared } from '../findings/formula.ts'
import { present } from '../plain/present.ts'
import { cdcBmi, cdcMass, cdcStature } from '../protocol/norms/cdc2000.table.ts'
import { ageMonths } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { bmiCentile, centile } from './centiles.ts'
import { growthFinding } from './says.ts'

/** Body mass index, kg/m2, on stature in metres. */
const bodyMassIndex = (massKg: number, statureCm: number): Formula =>
	over(quantity(massKg, 1), squared(quantity(statureCm / 100, 3)))
/** The index of a visit; undefined without stature and mass. */
export function bmiFormula(visit: Visit): Formula | undefined {
	const { statureCm, massKg } = bodySize(visit)
	return statureCm === undefined || massKg === undefined
		? undefined
		: bodyMassIndex(massKg, statureCm)
}
/** Body mass index, kg/m2; undefined without stature and mass. */
export const bmiOf = (visit: Visit): number | undefined => bmiFormula(visit)?.value
/** The centiles that can be read; what was not measured or is outside the table is absent. */
export function centilesOf(visit: Visit): GrowthResult['centiles'] {
	const { sex, birthDate } = visit.player
	const { statureCm, massKg } = bodySize(visit)
	const months = ageMonths(birthDate, visit.visitDate)
	const bmi = bmiOf(visit)
	return present({
		stature: statureCm === undefined ? undefined : centile(cdcStature, sex, months, statureCm),
		mass: massKg === undefined ? undefined : centile(cdcMass, sex, months, massKg),
		bmi: bmi === undefined ? undefined : bmiCentile(cdcBmi, sex, months, bmi),
	})
}
/** What the centiles are for, or why there are none. */
export function centileFindings(
	visit: Visit,
	{ stature, mass }: GrowthResult['centiles'],
): Finding[] {
	if (visit.body?.statureCm !== undefined && stature === undefined) {
		const { sex, birthDate } = visit.player
		const months = ageMonths(birthDate, visit.visitDate)
		return [
			growthFinding(
				state('growth.centile-age', {
					fromMonths: Math.min(...cdcStature[sex].map(([from]) => from)),
				}),
				'note',
				[reading('ageMonths', months, 'months')],
				{
					rule: 'ages of the growth reference',
					source: 'CDC 2000 growth charts',
					strength: 'standard',
				},
			),
		]
	}
	if (!stature && !mass) return []
	return [
		growthFinding(
			state('growth.centiles'),
			'note',
			[
				...(stature ? [{ measure: 'statureCentile', value: rounded(stature.percentile, 0) }] : []),
				...(mass ? [{ measure: 'massCentile', value: rounded(mass.percentile, 0) }] : []),
			],
			{ rule: 'growth centiles', source: 'CDC 2000 growth charts', strength: 'standard' },
		),
	]
}
