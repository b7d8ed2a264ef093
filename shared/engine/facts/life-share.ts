/**
 * How long a pair lasts under this player: a share of the usual life, by body mass. Adults only;
 * common practice, no source.
 */
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'

/**
 * Share (0 to 1) of the usual life of a pair whose own life was not recorded; 1 for minors and
 * where mass is not known.
 */
export function lifeShare(visit: Visit, protocol: Protocol): number {
	const massKg = visit.body?.massKg
	if (
		massKg === undefined ||
		ageYears(visit.player.birthDate, visit.visitDate) < protocol.value('footwear.adultFromYears')
	)
		return 1
	if (massKg >= protocol.value('footwear.heavyKg')) return protocol.value('footwear.lifeShareHeavy')
	if (massKg >= protocol.value('footwear.lifeMassKg'))
		return protocol.value('footwear.lifeShareMass')
	return 1
}
