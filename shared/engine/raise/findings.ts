/** What the raise room says: the aim, each pair, and what to look out for. */
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import { type Because, commonPractice } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import type { Against, Aimed } from './aim.ts'
import { kneeAtRisk } from './forefoot.ts'
import type { InPair } from './in-pair.ts'
import type { RaisedPair } from './pairs.ts'

const nameOf = ({ name, role }: RaisedPair) => present({ pair: name, role })
const isGiven = ({ entry }: InPair): boolean => entry.left.addMm > 0 || entry.right.addMm > 0

/** The aim for both heels: its kind decides the words. */
function aimFindings({ reasons }: Aimed, protocol: Protocol): Finding[] {
	const [first] = reasons
	if (!first) return []
	const { kind, key, mm, offsetShare } = first
	const alike = reasons.filter((reason) => reason.kind === kind)
	const names = [...new Set(alike.map(({ name }) => name))]
	const statement =
		kind === 'range'
			? state('raise.range', { mm, reasons: names })
			: state('raise.pain', { mm, reasons: names, offsetCounts: offsetShare > 0 })
	return [
		findingOf(statement, {
			side: 'both',
			level: 'advise',
			because: reasons.flatMap(({ because }) => because),
			basis: protocol.basis('heel raise to both feet', key),
		}),
	]
}
function legLengthFindings(
	visit: Visit,
	{ correctionMm, shorter }: Aimed,
	protocol: Protocol,
): Finding[] {
	const differenceMm = visit.body?.legLengthDifferenceMm
	if (shorter === undefined || differenceMm === undefined) return []
	return [
		findingOf(state('raise.leg-length', { side: shorter, mm: correctionMm, differenceMm }), {
			side: shorter,
			level: 'advise',
			because: [reading('legLengthDifferenceMm', differenceMm, 'mm')],
			basis: protocol.basis('leg-length correction', 'posture.legLengthShareMax'),
		}),
	]
}
const againstFinding = (against: Against): Finding => {
	const { why, side } = against
	return findingOf(
		why === 'limb-waits'
			? state('raise.limb-waits', { side })
			: state('raise.back-of-ankle', { side, front: against.front }),
		{
			side,
			level: why === 'limb-waits' ? 'note' : 'advise',
			because:
				why === 'limb-waits'
					? []
					: [{ measure: 'posterior-ankle-impingement', side, value: 'current' }],
			basis: { rule: 'heel raise to both feet', ...commonPractice },
		},
	)
}
function pairFinding(given: InPair, { reasons }: Aimed, protocol: Protocol): Finding[] {
	if (!isGiven(given)) return []
	const { pair, entry, reason, wantedMm } = given
	const { left, right, offsetMm } = entry
	const key = reason?.key ?? reasons[0]?.key ?? 'posture.legLengthShareMax'
	return [
		findingOf(
			state('raise.pair', {
				...nameOf(pair),
				mm: { left: left.addMm, right: right.addMm },
				madeBy: { left: left.madeBy, right: right.madeBy },
			}),
			{
				of: pair.idPart,
				side: 'both',
				level: 'advise',
				because: [
					...(wantedMm === undefined ? [] : [reading('raiseMm', wantedMm, 'mm')]),
					...(offsetMm === undefined ? [] : [reading('heelToForefootOffsetMm', offsetMm, 'mm')]),
				],
				basis: protocol.basis('heel raise in a pair', key),
			},
		),
	]
}
/** One finding for all pairs whose offset is missing. */
function unknownFindings(given: readonly InPair[], { reasons }: Aimed): Finding[] {
	const unknown = given.filter(({ wantedMm }) => wantedMm === undefined)
	if (unknown.length === 0) return []
	return [
		findingOf(state('raise.offset-unknown', { pairs: unknown.map(({ pair }) => nameOf(pair)) }), {
			side: 'both',
			level: 'advise',
			because: reasons.flatMap(({ because }) => because),
			basis: { rule: 'heel above forefoot', ...commonPractice },
		}),
	]
}
/** What becomes of the raises that lie in pairs today. */
export const wornFindings = (
	worn: readonly { pair: RaisedPair; verdict: 'leave' | 'take-out'; given: boolean }[],
): Finding[] =>
	worn.map(({ pair, verdict, given }) =>
		findingOf(state('raise.worn', { ...nameOf(pair), wornMm: pair.wornMm, verdict, given }), {
			of: pair.idPart,
			side: 'both',
			level: 'note',
			because: [reading('heelLiftMm', pair.wornMm, 'mm')],
			basis: { rule: 'heel raise that is worn', ...commonPractice },
		}),
	)
const wornIn = (given: readonly InPair[]) =>
	given.flatMap((one) => {
		const { worn } = one.entry
		return worn && worn.raiseMm > 0
			? [{ pair: one.pair, verdict: worn.verdict, given: isGiven(one) }]
			: []
	})
/** What a raised heel loads more; nothing where none is given. */
function loadFindings(
	visit: Visit,
	given: readonly InPair[],
	forefoot: readonly Because[],
	protocol: Protocol,
): Finding[] {
	if (!given.some(isGiven)) return []
	const knee = kneeAtRisk(visit)
	const limitMm = protocol.value('raise.heelAboveForefootAtRiskMm')
	return [
		...(forefoot.length === 0
			? []
			: [
					findingOf(state('raise.forefoot', { limitMm }), {
						side: 'both',
						level: 'caution',
						because: [...forefoot],
						basis: protocol.basis('load on the forefoot', 'raise.heelAboveForefootAtRiskMm'),
					}),
				]),
		...(knee.length === 0
			? []
			: [
					findingOf(state('raise.front-of-knee'), {
						side: 'both',
						level: 'note',
						because: knee,
						basis: { rule: 'load on the front of the knee', ...commonPractice },
					}),
				]),
	]
}
/** Everything that is said of a raise that is not held. @param forefoot why it bears no more load */
export function raiseFindings(
	visit: Visit,
	aimed: Aimed,
	given: readonly InPair[],
	forefoot: readonly Because[],
	protocol: Protocol,
): Finding[] {
	return [
		...aimFindings(aimed, protocol),
		...legLengthFindings(visit, aimed, protocol),
		...aimed.against.map(againstFinding),
		...given.flatMap((one) => pairFinding(one, aimed, protocol)),
		...unknownFindings(given, aimed),
		...wornFindings(wornIn(given)),
		...loadFindings(visit, given, forefoot, protocol),
	]
}
