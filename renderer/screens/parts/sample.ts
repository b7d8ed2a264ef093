/** Invented visits that the parts are shown with. */
import type { DraftContent } from '../../../shared/contract.ts'
import { assess } from '../../../shared/engine/assess.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'

export const longName = 'Maximiliana-Theodora Featherstonehaugh-Abercrombie of the Reserve Team'

const visitOf = (visitDate: string, leftMm: number, pain: number): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'Sample', familyName: 'Player', birthDate: '2012-04-02', sex: 'female' },
		visitDate,
		play: { code: 'association', organisedHoursPerWeek: 6 },
		conditions: [
			{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current', painWorst: pain },
		],
		feet: {
			left: { heelToToeMm: [leftMm, leftMm + 1], ballWidthMm: 95 },
			right: { heelToToeMm: leftMm + 3, ballWidthMm: 97 },
		},
		ankles: { left: { lungeCm: 7 }, right: { lungeCm: 9.5 } },
		screening: { nightPain: false },
	})
export const earlier = visitOf('2026-07-15', 241, 6)
export const latest = visitOf('2027-01-20', 246, 4)
export const assessment = assess(latest, [earlier], clinicProtocol.file)
export const draft: DraftContent = { visit: latest, raw: {}, decisions: noDecisions }
