/**
 * The spine: (visit, earlier visits, protocol, shelf) -> Assessment. The only place where rooms
 * meet.
 */
import { ankle } from './ankle/ankle.ts'
import { conditionFindings } from './conditions/findings.ts'
import { factsOf } from './facts/facts-of.ts'
import { notToday } from './facts/not-today.ts'
import { ownedOnly } from './facts/planned-pairs.ts'
import { visitsBefore } from './facts/visits-before.ts'
import type { Assessment } from './findings/assessment.ts'
import type { Finding, Level } from './findings/finding.ts'
import { missingMeasures } from './findings/missing.ts'
import { footwear } from './footwear/footwear.ts'
import { insertVolume } from './footwear/insert-volume.ts'
import { roomInFirst, withShelf, withWork } from './footwear/with-shelf.ts'
import { growth } from './growth/growth.ts'
import { loading } from './loading/loading.ts'
import { posture, postureSides } from './posture/posture.ts'
import { heelsInModel, heelsOf } from './prescription/heels.ts'
import { ownedPairs, pairsForRaise, pairsSeen } from './prescription/owned.ts'
import { prescribe } from './prescription/prescribe.ts'
import { opened, type Protocol, type ProtocolFile, shippedProtocol } from './protocol/protocol.ts'
import { recheckFindings } from './recheck/findings.ts'
import { withToldSigns } from './recheck/told.ts'
import { unansweredSince } from './recheck/unanswered.ts'
import { gateOf } from './screening/gate.ts'
import { screening } from './screening/screening.ts'
import { sizing } from './sizing/sizing.ts'
import { decimalAgeYears } from './visit/age.ts'
import type { Shelf } from './visit/shelf.ts'
import { rounded } from './visit/sides.ts'
import type { Visit } from './visit/visit.ts'

export const engineVersion = '0.6.0'
const consequence: Record<Level, number> = { stop: 0, caution: 1, advise: 2, note: 3 }

/** The facts are drawn from what was read; what is made of it waits for the gate. */
function dangerFirst(visit: Visit, before: readonly Visit[], protocol: Protocol) {
	const screened = screening(visit, protocol)
	const read = { screening: screened, posture: postureSides(visit, protocol) }
	const facts = factsOf(visit, read, protocol)
	const { gate, findings } = gateOf(visit, before, screened, facts, protocol)
	return { screening: screened, facts, gate, findings }
}
/** The rooms that measure, in the order of the walk. */
function measuringRooms(
	visit: Visit,
	before: readonly Visit[],
	{ screening: screened, facts, gate }: ReturnType<typeof dangerFirst>,
	protocol: Protocol,
	shelf: Shelf | undefined,
) {
	const sized = sizing(visit, before, protocol, { facts, shelf })
	return {
		sizing: sized,
		ankle: ankle(visit, before, protocol, { facts, gate }),
		posture: posture(visit, before, protocol, { facts, gate }),
		growth: growth(visit, before, protocol, sized.fitLengthMm),
		screening: screened,
	}
}
/** What may wait with its limb, and what is lacking beside that. */
function stillToMeasure(
	visit: Visit,
	{ screening: screened, gate }: ReturnType<typeof dangerFirst>,
	protocol: Protocol,
) {
	const testsWait = notToday(visit, screened, gate, protocol)
	const missing = [...unansweredSince(visit), ...missingMeasures(visit, protocol, testsWait)]
	return { testsWait, missing }
}
/** What all rooms found, most consequential first; within one level in the order of the rooms. */
function inOrder(rooms: readonly ({ findings: readonly Finding[] } | undefined)[]): Finding[] {
	const findings = rooms.flatMap((room) => room?.findings ?? [])
	return findings.sort((finding, other) => consequence[finding.level] - consequence[other.level])
}
/**
 * The whole assessment of a visit.
 * @param recorded a parsed visit (parseVisit); pairs that are only planned are left out
 * @param earlier the same player's earlier visits, any order
 * @param given the protocol; one that is kept open works its identity out once
 * @param shelf the clinic's catalogue (parseShelf); without it no model is ranked
 * @returns the Assessment; what cannot be computed is absent, and a finding or `missing` says why
 */
export function assess(
	recorded: Visit,
	earlier: readonly Visit[] = [],
	given: ProtocolFile | Protocol = shippedProtocol,
	shelf?: Shelf,
): Assessment {
	const protocol = opened(given)
	const visit = withToldSigns(ownedOnly(recorded))
	const before = visitsBefore(visit, earlier).map(withToldSigns)
	const first = dangerFirst(visit, before, protocol)
	const { facts, gate } = first
	const rooms = measuringRooms(visit, before, first, protocol, shelf)
	const load = loading(visit, protocol, gate)
	const seen = pairsSeen(visit, { ...rooms, facts, gate }, protocol)
	const context = { ...rooms, facts, gate, ...pairsForRaise(visit, seen) }
	// The shelf is matched with the insert proposed inside; the insert is then checked against the
	// room in the first model that passes.
	const anywhere = heelsOf(visit, context, protocol)
	const volume = insertVolume(anywhere.inserts)
	const asked = { ...rooms, facts, gate, raise: anywhere.raised }
	const wishes = footwear(visit, asked, protocol)
	const matched = withShelf(wishes, visit, asked, shelf, protocol, volume)
	const model = roomInFirst(matched, shelf, volume)
	const { inserts, raised } = model ? heelsInModel(visit, context, protocol, model) : anywhere
	const known = { ...rooms, facts, gate, raise: raised }
	// what is done to a shoe reads the raise as it stands
	const shoes = withWork(matched, visit, known, protocol)
	const owned = ownedPairs(visit, { ...known, footwear: shoes }, protocol, seen)
	const findings = inOrder([
		rooms.screening,
		rooms.sizing,
		rooms.ankle,
		rooms.posture,
		rooms.growth,
		shoes,
		inserts,
		load,
		raised,
		owned,
		{ findings: first.findings },
		{ findings: conditionFindings(visit, gate, protocol) },
		{ findings: recheckFindings(visit, before, protocol) },
	])
	const { growth: grown, ...rest } = rooms
	return {
		format: 'lastwright-assessment',
		version: 1,
		engine: engineVersion,
		protocol: protocol.identity(),
		visitDate: visit.visitDate,
		ageYears: rounded(decimalAgeYears(visit.player.birthDate, visit.visitDate), 4),
		...rest,
		loading: load,
		...(grown ? { growth: grown } : {}),
		footwear: shoes,
		insert: inserts,
		raise: { workings: raised.workings },
		prescription: prescribe(
			visit,
			before,
			{
				...known,
				loading: load,
				footwear: shoes,
				owned: owned.pairs,
				insert: inserts,
				findings,
				shelf,
			},
			protocol,
		),
		findings,
		...stillToMeasure(visit, first, protocol),
	}
}
