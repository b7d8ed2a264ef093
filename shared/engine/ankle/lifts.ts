/** Heel raises that already lie in the pairs the player owns, against the limits in use. */
import { isTrainer } from '../facts/trainer.ts'
import { type Finding, idPart, reading, sayFinding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { pairName } from './pairs.ts'

interface Limit {
	key: ThresholdKey
	level: 'caution' | 'stop'
	rule: string
}
const trainerLimit: Limit = {
	key: 'ankle.raiseTrainerMm',
	level: 'caution',
	rule: 'heel raise limit, trainers',
}
/** Of a boot, the gravest first. */
const bootLimits: readonly Limit[] = [
	{ key: 'ankle.raiseStopMm', level: 'stop', rule: 'heel raise limit' },
	{ key: 'ankle.raiseWarnMm', level: 'caution', rule: 'heel raise limit' },
]
/** A finding for each pair whose heel raise is above the limit of its kind. */
export function liftFindings(visit: Visit, protocol: Protocol): Finding[] {
	return (visit.footwear ?? []).flatMap((pair, index) => {
		const liftMm = pair.heelLiftMm ?? 0
		const trainer = isTrainer(pair)
		const limits = trainer ? [trainerLimit] : bootLimits
		const passed = limits.find(({ key }) => liftMm > protocol.value(key))
		return passed ? [liftFinding(pair, index, liftMm, passed, protocol)] : []
	})
}
function liftFinding(
	pair: Pair,
	index: number,
	liftMm: number,
	{ key, level, rule }: Limit,
	protocol: Protocol,
): Finding {
	const limitMm = protocol.value(key)
	const above =
		key === trainerLimit.key
			? `above ${limitMm} mm, the most tried in daily shoes`
			: `above the ${limitMm} mm limit in use`
	return sayFinding({
		topic: 'ankle',
		rule: `lift-${idPart(pair.id, index)}`,
		side: 'both',
		level,
		says: `The heel raise of ${liftMm} mm in ${pairName(pair)} is ${above}: check heel hold.`,
		because: [reading('heel raise inside', liftMm, 'mm')],
		basis: protocol.basis(rule, key),
	})
}
