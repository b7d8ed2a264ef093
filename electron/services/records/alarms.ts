/** What was found amiss with the records: said until the owner has looked into it. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Deps } from './deps.ts'
import type { Memory } from './memory.ts'
import { Refusal } from './refusal.ts'

export const listAlarms = ({ store }: Pick<Deps, 'store'>): OutputOf<'audit.alarms'> => ({
	alarms: store.alarms().map(({ at, says }) => ({ at, says })),
})
/**
 * Goes on from what is there; the reason stands in the audit trail.
 * @throws Refusal where there is nothing to settle
 */
export function settleAlarms(
	memory: Memory,
	{ store }: Pick<Deps, 'store'>,
	{ reason }: InputOf<'audit.settle'>,
): OutputOf<'audit.settle'> {
	const said = new Set(store.alarms().map(({ says }) => says))
	if (said.size === 0)
		throw new Refusal('records.nothing-to-settle', 'Nothing waits to be looked into.')
	store.settleAlarms(reason)
	memory.settled(said)
	return {}
}
