/**
 * How long a pair lasts under this player: a share of the usual life, by body mass. Adults only;
 * common practice, no source.
 */
import type { Protocol } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'
import { isMinor } from './age.ts'

/**
 * Share (0 to 1) of the usual life of a pair whose own life was not recorded; 1 for minors and
 * where mass is not known.
 */
export function lifeShare(visit: Visit, protocol: Protocol): number {
	const { massKg } = bodySize(visit)
	if (massKg === undefined || isMinor(visit, protocol)) return 1
	if (massKg >= protocol.value('footwear.heavyKg')) return protocol.value('footwear.lifeShareHeavy')
	if (massKg >= protocol.value('footwear.lifeMassKg'))
		return protocol.value('footwear.lifeShareMass')
	return 1
}
