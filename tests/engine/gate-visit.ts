/** The gate of visits of which little but the warning signs is known. */
import { factsOf } from '../../shared/engine/facts/facts-of.ts'
import type { Gate, Holdable } from '../../shared/engine/findings/gate.ts'
import { posture } from '../../shared/engine/posture/posture.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { withToldSigns } from '../../shared/engine/recheck/told.ts'
import { gateOf } from '../../shared/engine/screening/gate.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import type { Outcome, Screening, Visit } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
export const visitOf = (answers: Screening, more: Partial<Visit> = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
	visitDate: '2027-01-20',
	screening: answers,
	...more,
})
export const aged = (birthDate: string): Pick<Visit, 'player'> => ({
	player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
})
export const gated = (recorded: Visit, earlier: readonly Visit[] = []) => {
	const visit = withToldSigns(recorded)
	const before = earlier.map(withToldSigns)
	const found = screening(visit, protocol)
	const facts = factsOf(
		visit,
		{ posture: posture(visit, before, protocol), screening: found },
		protocol,
	)
	return { ...gateOf(visit, before, found, facts, protocol), found, facts }
}
export const gateAt = (visit: Visit, before: readonly Visit[] = []): Gate =>
	gated(visit, before).gate
/** What is held, by part, each once. */
export const heldIn = (gate: Gate) => {
	const of = (part: keyof Gate) => [...new Set(gate[part].holds.map(({ what }) => what))].sort()
	return { person: of('person'), left: of('left'), right: of('right') }
}
export const outcomeOf = (
	rule: string,
	lifts: Holdable[],
	more: Partial<Outcome> = {},
): Outcome => ({
	rule,
	side: 'left',
	result: 'excluded',
	found: 'no fracture',
	how: 'film',
	by: 'radiology',
	on: '2027-01-20',
	lifts,
	...more,
})
/** An injured left ankle at which the Ottawa rule is met. */
export const brokenAnkle = {
	injury: { side: 'left', daysAgo: 1, malleolarZonePain: true, tenderLateralMalleolus: true },
} as const satisfies Screening
/** The core questions of an adult without complaint, answered no. */
export const askedAndNo = {
	nightPain: false,
	fever: false,
	reducedSensation: false,
} as const satisfies Screening
