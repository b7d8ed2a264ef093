/**
 * The spine: (visit, earlier visits, protocol, shelf) -> Assessment. The only place where rooms
 * meet.
 */
import { ankle } from './ankle/ankle.ts'
import { conditionFindings } from './conditions/findings.ts'
import { factsOf } from './facts/facts-of.ts'
import type { Assessment } from './findings/assessment.ts'
import type { Finding, Level } from './findings/finding.ts'
import { missingMeasures } from './findings/missing.ts'
import { footwear } from './footwear/footwear.ts'
import { insertVolume } from './footwear/insert-volume.ts'
import { roomInFirst, withShelf } from './footwear/with-shelf.ts'
import { growth } from './growth/growth.ts'
import { insert } from './insert/insert.ts'
import { loading } from './loading/loading.ts'
import { digestOf } from './plain/canonical.ts'
import { posture } from './posture/posture.ts'
import { prescribe } from './prescription/prescribe.ts'
import { openProtocol, type ProtocolFile, shippedProtocol } from './protocol/protocol.ts'
import { rows } from './protocol/rows.ts'
import { raise } from './raise/raise.ts'
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
	const before = earlier
		.filter(({ visitDate }) => visitDate < visit.visitDate)
		.sort((then, later) => (then.visitDate < later.visitDate ? -1 : 1))
	const rooms = {
		sizing: sizing(visit, before, protocol),
		ankle: ankle(visit, before, protocol),
		posture: posture(visit, before, protocol),
		growth: growth(visit, before, protocol),
		screening: screening(visit, protocol),
	}
	const facts = factsOf(visit, rooms, protocol)
	const { gate, findings: gated } = gateOf(visit, before, rooms.screening, facts, protocol)
	const load = loading(visit, protocol, gate)
	const raised = raise(visit, { ...rooms, facts, gate }, protocol)
	const inside = { posture: rooms.posture, gate, raise: raised }
	// The shelf is matched with the insert proposed inside; the insert is then checked against the
	// room in the first model that passes.
	const volume = insertVolume(insert(visit, inside, protocol))
	const shoes = withShelf(
		footwear(visit, { ...rooms, facts, gate }, protocol),
		visit,
		rooms,
		shelf,
		protocol,
		volume,
	)
	const room = roomInFirst(shoes, shelf, volume)
	const inserts = insert(visit, { ...inside, ...(room ? { room } : {}) }, protocol)
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
				...rooms,
				loading: load,
				facts,
				gate,
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
