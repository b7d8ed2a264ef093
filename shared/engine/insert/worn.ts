/**
 * The insert that a pair already holds: left in, taken out, or put in its place. Common practice,
 * no source.
 */
import type { InsertSide } from '../findings/assessment.ts'
import type { PerSide } from '../findings/compared.ts'
import { type Finding, findingOf, idPart } from '../findings/finding.ts'
import { bothSides } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import type { WornInsert } from '../words/en/insert-settled.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'

/** It hurts: out, whatever else; held: no change until an outcome; never two in one shoe. */
function verdictOn({ hurts }: Pair, inserts: PerSide<InsertSide>): WornInsert {
	const is = (wanted: InsertSide['state']) =>
		bothSides.some((side) => inserts[side].state === wanted)
	if (hurts === true) return 'take-out-hurts'
	if (is('held')) return 'leave-held'
	return is('proposed') ? 'take-out-new' : 'leave'
}
/** A verdict for each pair with an insert inside. */
export const wornFindings = ({ footwear = [] }: Visit, inserts: PerSide<InsertSide>): Finding[] =>
	footwear.flatMap((pair, place) => {
		if (pair.insertInside !== true) return []
		const verdict = verdictOn(pair, inserts)
		return [
			findingOf(state('insert.worn', { pair: pair.name ?? pair.id, verdict }), {
				of: idPart(pair.id, place),
				side: 'none',
				level: verdict === 'take-out-hurts' ? 'advise' : 'note',
				because: [{ measure: 'insertInside', value: pair.name ?? pair.id }],
				basis: practiceBasis('an insert already worn'),
			}),
		]
	})
