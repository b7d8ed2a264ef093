/** Heel raises that already lie in the pairs the player owns, against the limits in use. */
import { type Finding, findingOf, idPart, reading } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { pairName } from './pairs.ts'

const trainers = ['road', 'trail']
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
		const trainer = trainers.includes(pair.sole ?? '')
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
	const limit = key === trainerLimit.key ? 'trainer' : 'boot'
	return findingOf(state('ankle.lift', { pair: pairName(pair), liftMm, limitMm, limit }), {
		id: `ankle.lift-${idPart(pair.id, index)}.both`,
		side: 'both',
		level,
		because: [reading('heelLiftMm', liftMm, 'mm')],
		basis: protocol.basis(rule, key),
	})
}
