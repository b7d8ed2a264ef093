/** A visit of which little is known but the answers to the screening questions. */
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'

export const protocol = openProtocol()
export const visit = (
	answers: Screening,
	birthDate = '2000-01-01',
	play?: Visit['play'],
	massKg?: number,
): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
	visitDate: '2027-01-20',
	screening: answers,
	...(play ? { play } : {}),
	...(massKg ? { body: { massKg } } : {}),
})
/** The screening result of an adult, or of a player born on a day. */
export const screened = (answers: Screening, birthDate?: string) =>
	screening(visit(answers, birthDate), protocol)
