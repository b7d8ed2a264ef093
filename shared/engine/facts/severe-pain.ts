/** Pain now that is severe by the number that the player gave. */

import { recordedConditions } from '../conditions/query.ts'
import { conditionNames } from '../conditions/registry.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** Current conditions of this limb whose worst pain (0 to 10) reaches the protocol's limit. */
export const severePain = (visit: Visit, side: Side, protocol: Protocol): Because[] =>
	recordedConditions(visit, conditionNames, { side, when: 'current' }).flatMap(
		({ condition, painWorst }): Because[] =>
			painWorst !== undefined && painWorst >= protocol.value('screening.severePain')
				? [{ measure: condition, side, value: painWorst, unit: '/10' }]
				: [],
	)
