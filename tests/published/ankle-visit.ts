/** Visits that the checks of the ankle room share. */
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export const protocol = openProtocol()
export const of = (ankles: Visit['ankles'], more: Partial<Visit> = {}) =>
	ankle(
		{
			format: 'lastwright-visit',
			version: 1,
			visitDate: '2026-09-01',
			player: { givenName: 'A', familyName: 'B', birthDate: '1998-01-01', sex: 'male' },
			...(ankles ? { ankles } : {}),
			...more,
		},
		[],
		protocol,
	)
export const ids = (result: ReturnType<typeof of>): string[] =>
	result.findings.map((finding) => finding.id)
