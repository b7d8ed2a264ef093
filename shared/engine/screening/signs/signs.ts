/**
 * What the questions that unfold by complaint lead to: every sign of every group, in the order in
 * which the result lists them.
 */
import type { Finding } from '../../findings/finding.ts'
import {
	actionFor,
	type Conclusions,
	itemOf,
	type Screened,
	type StatedItem,
	screeningFinding,
	sidedId,
	stateOf,
} from '../conclusions.ts'
import { bloodSupplySigns } from './blood-supply.ts'
import { boneStressCautions, boneStressSigns } from './bone-stress.ts'
import { infectionSigns } from './infection.ts'
import { inflammationSigns } from './inflammation.ts'
import { limpSigns } from './limp.ts'
import { lowEnergySigns } from './low-energy.ts'
import { nerveSigns } from './nerves.ts'
import type { SignRow } from './sign-row.ts'
import { tendonAndLigamentSigns } from './tendon-and-ligament.ts'
import { tumourSigns } from './tumour.ts'

const signRows: readonly SignRow[] = [
	...boneStressSigns,
	...tendonAndLigamentSigns,
	...infectionSigns,
	...limpSigns,
	...tumourSigns,
	...nerveSigns,
	...bloodSupplySigns,
	...lowEnergySigns,
	...inflammationSigns,
]

/** An item for every sign whose group was opened, and what a sign that does not hold still says. */
export function signConclusions(screened: Screened): Conclusions {
	const readings = signRows.map((row) => conclusionsOf(row, screened))
	return {
		items: readings.flatMap(({ items }) => items),
		findings: [...readings.flatMap(({ findings }) => findings), ...boneStressCautions(screened)],
	}
}
function conclusionsOf(row: SignRow, screened: Screened): Conclusions {
	const basis = row.basis(screened.protocol)
	const items: StatedItem[] = []
	const findings: Finding[] = []
	for (const { side, holds, says, notMet } of row.read(screened.answers, screened)) {
		const id = sidedId(`screening.${row.id}`, side)
		const unmet = holds === false ? notMet : undefined
		items.push(
			itemOf(unmet ?? says, {
				side,
				state: stateOf(holds),
				action: holds === true ? actionFor(row, screened.minor) : 'proceed',
				basis,
				id,
			}),
		)
		if (unmet)
			findings.push(
				screeningFinding(unmet, {
					side,
					level: 'note',
					because: [{ measure: 'screeningAnswers', value: 'rule-not-met' }],
					basis,
					id: `${id}-not-met`,
				}),
			)
	}
	return { items, findings }
}
