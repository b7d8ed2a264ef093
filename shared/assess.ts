/** The spine: (visit, earlier visits, protocol) -> Assessment. The only place where rooms meet. */
import { ankle } from './ankle/ankle.ts'
import type { Assessment } from './assessment.ts'
import { digestOf } from './canonical.ts'
import type { Finding, Level } from './finding.ts'
import { footwear } from './footwear/footwear.ts'
import { growth } from './growth/growth.ts'
import { loading } from './loading/loading.ts'
import { missingMeasures } from './missing.ts'
import { posture } from './posture/posture.ts'
import { openProtocol, type ProtocolFile, shippedProtocol } from './protocol/protocol.ts'
import { rows } from './protocol/rows.ts'
import { screening } from './screening/screening.ts'
import { sizing } from './sizing/sizing.ts'
import { decimalAgeYears } from './visit/age.ts'
import { rounded } from './visit/sides.ts'
import type { Visit } from './visit/visit.ts'

export const engineVersion = '0.1.0'
const consequence: Record<Level, number> = { stop: 0, caution: 1, advise: 2, note: 3 }

/** Identity of the protocol in force: the digest covers shipped rows and what the clinic set. */
export function protocolIdentity(file: ProtocolFile): { id: string; version: number; digest: string } {
	return { id: file.id, version: file.revision, digest: digestOf({ rows, file }) }
}

/**
 * The whole assessment of a visit.
 * @param visit a parsed visit (parseVisit); @param earlier the same player's earlier visits, any order
 * @returns the Assessment; what cannot be computed is absent, and a finding or `missing` says why
 */
export function assess(visit: Visit, earlier: readonly Visit[] = [], protocolFile: ProtocolFile = shippedProtocol): Assessment {
	const protocol = openProtocol(protocolFile)
	const before = earlier.filter((one) => one.visitDate < visit.visitDate).sort((a, b) => (a.visitDate < b.visitDate ? -1 : 1))
	const rooms = { sizing: sizing(visit, protocol), ankle: ankle(visit, protocol), posture: posture(visit, protocol), growth: growth(visit, before, protocol), screening: screening(visit, protocol), loading: loading(visit, protocol) }
	const shoes = footwear(visit, rooms, protocol)
	const findings: Finding[] = [rooms.screening, rooms.sizing, rooms.ankle, rooms.posture, rooms.growth, shoes, rooms.loading].flatMap((room) => room?.findings ?? [])
	findings.sort((a, b) => consequence[a.level] - consequence[b.level])
	const { growth: grown, ...rest } = rooms
	return {
		format: 'lastwright-assessment',
		version: 1,
		engine: engineVersion,
		protocol: protocolIdentity(protocolFile),
		visitDate: visit.visitDate,
		ageYears: rounded(decimalAgeYears(visit.player.birthDate, visit.visitDate), 4),
		...rest,
		...(grown ? { growth: grown } : {}),
		footwear: shoes,
		findings,
		missing: missingMeasures(visit),
	}
}
