/** How the figure of each pair came about, with this player's numbers put in. */
import type { Working } from '../findings/finding.ts'
import { equation, exactly, minus, quantity, times } from '../findings/formula.ts'
import { linesOf, tenths } from '../findings/working.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { raiseEvidence } from '../protocol/raise-evidence.table.ts'
import type { Aimed } from './aim.ts'
import type { InPair } from './in-pair.ts'

function addedLine({ reason, pair }: InPair): string | undefined {
	if (!reason) return undefined
	const { mm, offsetShare } = reason
	if (offsetShare === 0) return `Added to the shoe: ${tenths(mm)} mm, whatever its offset`
	if (pair.offsetMm === undefined) return undefined
	const offset = quantity(pair.offsetMm, 1)
	const counted = offsetShare === 1 ? offset : times(exactly(offsetShare), offset)
	const added = equation(minus(quantity(mm, 1), counted), 'mm', 1)
	return `Heel above forefoot less offset: ${added}; not below 0`
}
function pairWorking(given: InPair, aimed: Aimed, protocol: Protocol): Working {
	const { pair, entry, baseMm, reason, insideLimitMm, pitchLimitMm } = given
	const key = reason?.key ?? 'posture.legLengthShareMax'
	return {
		id: `raise.pair-${pair.idPart}`,
		title: `Heel raise: ${pair.name ?? pair.id.replace('role.', 'new, ')}`,
		lines: linesOf(
			addedLine(given),
			`Limits: ${tenths(insideLimitMm)} mm under the heel inside, ${tenths(pitchLimitMm)} mm of ` +
				'heel above forefoot',
			`Both heels: ${tenths(baseMm)} mm`,
			aimed.correctionMm > 0
				? `Leg length, ${aimed.shorter}: ${tenths(aimed.correctionMm)} mm more`
				: undefined,
			`Left ${tenths(entry.left.addMm)} mm, right ${tenths(entry.right.addMm)} mm`,
			raiseEvidence[key],
			'An estimate: the clinician decides',
		),
		basis: protocol.basis('heel raise in a pair', key),
	}
}
/** One working for each pair in which something was asked for and that is worn. */
export function raiseWorkings(
	given: readonly InPair[],
	aimed: Aimed,
	protocol: Protocol,
): Working[] {
	if (aimed.aim.kind === 'none') return []
	return given
		.filter(({ pair, wantedMm }) => !pair.leftOff && wantedMm !== undefined)
		.map((one) => pairWorking(one, aimed, protocol))
}
