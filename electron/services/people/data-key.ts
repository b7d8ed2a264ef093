/** The key of the records is changed: on the owner's wish, and when a person leaves. */
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { recoverySlot } from '../../store/key-slots.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { keyChangeDue } from './sealed-notes.ts'
import type { Session } from './session.ts'

type Here = Pick<Memory, 'people'>

/**
 * Names of those whose passphrase does not open what is written under a new key, as they did not
 * unlock since the upgrade; undefined where there are none.
 */
export function needNewPassphrase({ people }: Here, { store }: Deps): string[] | undefined {
	const old = store.slotsOfOldForm()
	const names = people
		.all()
		.filter(({ active, slot }) => active && old.includes(slot))
		.map(({ name }) => name)
	return names.length > 0 ? names : undefined
}
/**
 * Changes the key in the transaction of the caller, unless the printed recovery key is of an earlier
 * version and could not open it: then the owner is told until it was done.
 * @returns whether it was changed
 */
export function changeKeyIfItMay({ store, now }: Deps, { paper }: Session): boolean {
	if (store.slotsOfOldForm().includes(recoverySlot)) {
		keyChangeDue.write(store, now().toISOString())
		return false
	}
	paper.dropPending()
	store.changeDataKey()
	keyChangeDue.write(store, null)
	store.audit({ function: 'update', objectRef: 'data-key', purpose: 'key of the records changed' })
	return true
}
/** The owner's own wish. @throws Refusal where a new recovery key must be printed first */
export function changeDataKey(
	here: Here,
	deps: Deps,
	session: Session,
): OutputOf<'people.changeDataKey'> {
	const changed = deps.store.together(() => changeKeyIfItMay(deps, session))
	if (!changed)
		throw new Refusal(
			'The recovery key was printed by an earlier version and would not open a new key. Issue a ' +
				'new recovery key under My access first, then change the key of the records.',
		)
	return present({ needNewPassphrase: needNewPassphrase(here, deps) })
}
