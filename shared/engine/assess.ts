/**
 * The spine: (visit, earlier visits, protocol, shelf) -> Assessment. The only place where rooms
 * meet.
 */
import { ankle } from './ankle/ankle.ts'
import { conditionFindings } from './conditions/findings.ts'
import { factsOf } from './facts/facts-of.ts'
import { visitsBefore } from './facts/visits-before.ts'
import type { Assessment } from './findings/assessment.ts'
import type { Finding, Level } from './findings/finding.ts'
import { missingMeasures } from './findings/missing.ts'
import { footwear } from './footwear/footwear.ts'
import { insertVolume } from './footwear/insert-volume.ts'
import { roomInFirst, withShelf } from './footwear/with-shelf.ts'
import { growth } from './growth/growth.ts'
import type { InsertRoom } from './insert/facts.ts'
import { insert } from './insert/insert.ts'
import { insertsInside } from './insert/pairs.ts'
import { loading } from './loading/loading.ts'
import { digestOf } from './plain/canonical.ts'
import { present } from './plain/present.ts'
import { posture } from './posture/posture.ts'
import { prescribe } from './prescription/prescribe.ts'
import {
	openProtocol,
	type Protocol,
	type ProtocolFile,
	shippedProtocol,
} from './protocol/protocol.ts'
import { rows } from './protocol/rows.ts'
import { type RaiseContext, raise } from './raise/raise.ts'
import { gateOf } from './screening/gate.ts'
import { screening } from './screening/screening.ts'
import { sizing } from './sizing/sizing.ts'
import { decimalAgeYears } from './visit/age.ts'
import type { Shelf } from './visit/shelf.ts'
import { rounded } from './visit/sides.ts'
import type { Visit } from './visit/visit.ts'

export const engineVersion = '0.4.0'
const consequence: Record<Level, number> = { stop: 0, caution: 1, advise: 2, note: 3 }

/** Identity of the protocol in force: the digest covers shipped rows and what the clinic set. */
export function protocolIdentity(file: ProtocolFile): {
	id: string
	version: number
	digest: string
} {
	return { id: file.id, version: file.revision, digest: digestOf({ rows, file }) }
}

/**
 * Insert and raise share the room under a heel: the insert makes way for the raise that is wanted,
 * the raise is given what the insert leaves, and the insert then carries it. @param room the boot
 */
function heelsOf(visit: Visit, context: RaiseContext, protocol: Protocol, room?: InsertRoom) {
	const wanted = raise(visit, context, protocol)
	const { posture, gate } = context
	const inside = present({ posture, gate, wanted, room })
	const insertsUnder = insertsInside(insert(visit, inside, protocol), wanted, visit)
	const raised = raise(visit, { ...context, insertsInside: insertsUnder }, protocol)
	return { raised, inserts: insert(visit, { ...inside, raised }, protocol) }
}
/**
 * The whole assessment of a visit.
 * @param visit a parsed visit (parseVisit); @param earlier the same player's earlier visits, any
 * order
 * @param shelf the clinic's catalogue (parseShelf); without it no model is ranked
 * @returns the Assessment; what cannot be computed is absent, and a finding or `missing` says why
 */
export function assess(
	visit: Visit,
	earlier: readonly Visit[] = [],
	protocolFile: ProtocolFile = shippedProtocol,
	shelf?: Shelf,
): Assessment {
	const protocol = openProtocol(protocolFile)
	const before = visitsBefore(visit, earlier)
	const posed = posture(visit, before, protocol)
	const screened = screening(visit, protocol)
	const facts = factsOf(visit, { posture: posed, screening: screened }, protocol)
	const sized = sizing(visit, before, protocol, { facts, shelf })
	const rooms = {
		sizing: sized,
		ankle: ankle(visit, before, protocol),
		posture: posed,
		growth: growth(visit, before, protocol, sized.fitLengthMm),
		screening: screened,
	}
	const { gate, findings: gated } = gateOf(visit, before, screened, facts, protocol)
	const load = loading(visit, protocol, gate)
	const known = { ...rooms, facts, gate }
	const heels = (room?: InsertRoom) => heelsOf(visit, known, protocol, room)
	// The shelf is matched with the insert proposed inside; the insert is then checked against the
	// room in the first model that passes.
	const volume = insertVolume(heels().inserts)
	const shoes = withShelf(footwear(visit, known, protocol), visit, rooms, shelf, protocol, volume)
	const { inserts, raised } = heels(roomInFirst(shoes, shelf, volume))
	const findings: Finding[] = [
		rooms.screening,
		rooms.sizing,
		rooms.ankle,
		rooms.posture,
		rooms.growth,
		shoes,
		inserts,
		load,
		raised,
		{ findings: gated },
		{ findings: conditionFindings(visit, rooms.screening, protocol) },
	].flatMap((room) => room?.findings ?? [])
	findings.sort((finding, other) => consequence[finding.level] - consequence[other.level])
	const { growth: grown, ...rest } = rooms
	return {
		format: 'lastwright-assessment',
		version: 1,
		engine: engineVersion,
		protocol: protocolIdentity(protocolFile),
		visitDate: visit.visitDate,
		ageYears: rounded(decimalAgeYears(visit.player.birthDate, visit.visitDate), 4),
		...rest,
		loading: load,
		...(grown ? { growth: grown } : {}),
		footwear: shoes,
		insert: inserts,
		prescription: prescribe(
			visit,
			before,
			{
				...known,
				loading: load,
				raise: raised,
				footwear: shoes,
				insert: inserts,
				findings,
				shelf,
			},
			protocol,
		),
		findings,
		missing: missingMeasures(visit, protocol),
	}
}
