/**
 * What stopped the season of a record of before 0.4, whose visit has no gate. A record of today is
 * stopped by its gate alone.
 */
import { conditionReading, recordedConditions } from '../../conditions/query.ts'
import { type Finding, findingOf } from '../../findings/finding.ts'
import type { Basis } from '../../protocol/basis.ts'
import type { Condition } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import { type Statement, state } from '../../words/statement.ts'
import { namesOf, sideOf, thatAsk } from './condition-asks.ts'

const sensation: readonly Condition[] = ['neuropathy', 'previous-foot-ulcer']
const bases: Record<'bone-stress' | 'sensation', Basis> = {
	'bone-stress': {
		rule: 'current bone stress injury',
		source: 'high-risk bone stress: stop impact (AAFP 2003;67:85; Ekstrand & van Dijk 2013)',
		strength: 'guideline',
	},
	sensation: {
		rule: 'neuropathy or previous ulcer blocks the rotation',
		source: 'NICE NG19 (high risk)',
		strength: 'guideline',
	},
}
/** The finding that stops all planning where a recorded condition asked for it. */
export function stopBefore(visit: Pick<Visit, 'conditions'>): (Finding & Statement) | undefined {
	const found = {
		'bone-stress': thatAsk(visit, ({ ask }) => ask === 'stop'),
		sensation: recordedConditions(visit, sensation, { when: 'ever' }),
	}
	const stop = (['bone-stress', 'sensation'] as const).find((one) => found[one].length > 0)
	return (
		stop &&
		findingOf(state(`season.stop-${stop}`, { conditions: namesOf(found[stop]) }), {
			id: `season.stop-${stop}`,
			side: sideOf(found[stop]),
			level: 'stop',
			because: found[stop].map(conditionReading),
			basis: bases[stop],
		})
	)
}
