/** The key of the records is changed: on the owner's wish, and when a person leaves. */
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { recoverySlot } from '../../store/key-slots.ts'
import type { Store } from '../../store/store.ts'
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
/** In the transaction of the caller. */
function changeKey(store: Store): void {
	store.changeDataKey()
	keyChangeDue.write(store, null)
	store.audit({ function: 'update', objectRef: 'data-key', purpose: 'key of the records changed' })
}
/**
 * Changes the key in the transaction of the caller, unless the printed recovery key is of an earlier
 * version and could not open it: then the owner is told until it was done.
 * @returns whether it was changed
 */
function changeKeyIfItMay({ store, now }: Deps): boolean {
	if (store.slotsOfOldForm().includes(recoverySlot)) {
		keyChangeDue.write(store, now().toISOString())
		return false
	}
	changeKey(store)
	return true
}
/**
 * A secret was replaced: together with a copy of before the old one opens nothing that is written
 * from now on. Left as it is where somebody has not unlocked since the upgrade, whom a new key would
 * shut out. In the transaction of the caller.
 */
export function changeKeyWithSecret(store: Store): void {
	if (store.slotsOfOldForm().length === 0) changeKey(store)
}
/** A person left: see `changeKeyIfItMay`. */
export function changeKeyWithPerson(deps: Deps, { paper }: Session): boolean {
	paper.dropPending()
	return changeKeyIfItMay(deps)
}
/** The owner's own wish. @throws Refusal where a new recovery key must be printed first */
export function changeDataKey(
	here: Here,
	deps: Deps,
	session: Session,
): OutputOf<'people.changeDataKey'> {
	session.paper.dropPending()
	const changed = deps.store.together(() => changeKeyIfItMay(deps))
	if (!changed)
		throw new Refusal(
			'people.old-recovery-key',
			'The recovery key was printed by an earlier version and would not open a new key. Issue a ' +
				'new recovery key under My access first, then change the key of the records.',
		)
	return present({ needNewPassphrase: needNewPassphrase(here, deps) })
}
