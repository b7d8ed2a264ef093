/** Visits that the checks of the sizing room share. */
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export const protocol = openProtocol()
export const visit = (feet: Visit['feet'], player: Partial<Visit['player']> = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	visitDate: '2026-09-01',
	player: { givenName: 'A', familyName: 'B', birthDate: '1998-01-01', sex: 'male', ...player },
	...(feet ? { feet } : {}),
})
