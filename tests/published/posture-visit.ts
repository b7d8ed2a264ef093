/** Visits that the checks of the posture room share. */
import { posture } from '../../shared/engine/posture/posture.ts'
import { openProtocol, shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export const raw = openProtocol(),
	trial = openProtocol({ ...shippedProtocol, fpiScheme: 'trial' })
export const visit = (
	recorded: NonNullable<Visit['posture']>,
	more: Partial<Visit> & { born?: string; sex?: 'male' | 'female' } = {},
): Visit => {
	const { born = '1998-01-01', sex = 'male', ...rest } = more
	return {
		format: 'lastwright-visit',
		version: 1,
		visitDate: '2026-09-01',
		player: { givenName: 'A', familyName: 'B', birthDate: born, sex },
		posture: recorded,
		...rest,
	}
}
/** Six items of -2 to 2 with the total asked for. */
export const items = (total: number): number[] =>
	Array.from({ length: 6 }, (_, i) => {
		const left = Math.abs(total) - 2 * i
		return Math.sign(total) * Math.max(0, Math.min(2, left)) + 0
	})
export const ids = (v: Visit): string[] => posture(v, [], raw).findings.map((finding) => finding.id)
