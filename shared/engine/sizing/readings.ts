/** How the feet were read: how often, and in which stance. */
import { seatedShorterMm } from '../findings/change.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Side, SideOf, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

const sameStance: Basis = {
	rule: 'same stance',
	source:
		'Xiong 2009 (n 30): 2.8 mm (men) and 3.3 mm (women) between unloaded and fully loaded, ' +
		'derived for a stature of 1750 mm',
	strength: 'cross-sectional',
}
/**
 * The measures that a decision rests on: each read twice, a third time where the two differ too
 * much.
 */
const repeated = [
	['heelToToeMm', 'third-reading'],
	['heelToBallMm', 'third-reading-ball'],
	['ballWidthMm', 'third-reading-width'],
	['ballGirthMm', 'third-reading-girth'],
] as const

/** The readings of a foot measure, mm, in the order taken; none where it was not measured. */
export function readingsOf(visit: Visit, side: Side, field: keyof SideOf<'feet'>): number[] {
	const read = visit.feet?.[side]?.[field]
	return read === undefined ? [] : [read].flat()
}
/** A finding for each measure whose two readings differ by more than the limit. */
export function thirdReadingFindings(visit: Visit, side: Side, protocol: Protocol): Finding[] {
	return repeated.flatMap(([measure, rule]) => {
		const readings = readingsOf(visit, side, measure)
		const [first, second] = readings
		if (first === undefined || second === undefined || readings.length !== 2) return []
		const gapMm = Math.abs(first - second)
		if (rounded(gapMm, 3) <= protocol.value('sizing.thirdReadingMm')) return []
		return [
			findingOf(state('sizing.third-reading', { side, measure, gapMm: rounded(gapMm, 1) }), {
				id: `sizing.${rule}.${side}`,
				side,
				level: 'advise',
				because: [
					reading('firstReading', first, 'mm', side),
					reading('secondReading', second, 'mm', side),
				],
				basis: protocol.basis('third reading', 'sizing.thirdReadingMm'),
			}),
		]
	})
}
/** A finding where the feet were measured seated. */
export function stanceFindings(visit: Visit): Finding[] {
	if (visit.feet?.stance !== 'seated') return []
	return [
		findingOf(state('sizing.seated', { shorterMm: seatedShorterMm }), {
			side: 'both',
			level: 'caution',
			because: [{ measure: 'stance', value: 'seated' }],
			basis: sameStance,
		}),
	]
}
