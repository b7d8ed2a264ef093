/** Who counts as an adult: one age for every room, the protocol's. */
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'

/** Whether someone is an adult on a day; both ISO dates. */
export const isAdultOn = (birthDate: string, day: string, protocol: Protocol): boolean =>
	ageYears(birthDate, day) >= protocol.value('player.adultFromYears')
/** Whether the player is an adult on the day of the visit. */
export const isAdult = ({ player, visitDate }: Visit, protocol: Protocol): boolean =>
	isAdultOn(player.birthDate, visitDate, protocol)
/** Whether the player is a minor on the day of the visit. */
export const isMinor = (visit: Visit, protocol: Protocol): boolean => !isAdult(visit, protocol)
