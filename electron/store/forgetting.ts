/** What the parts of a store remember is let go: another file was opened, or it was locked. */
import type { Parts } from './parts.ts'

/** Another file was opened: what was remembered of the one before is not so. */
export function forgetFile({ trail, roll, order, inventory, keeper, installation }: Parts): void {
	trail.opened()
	roll.forget()
	inventory.forget()
	keeper.forget()
	installation.forget()
	order.opened()
}
/** Forgets the keys; a search that was being typed is in the trail first. */
export function lockUp({ trail, keyring, inventory, keeper, installation }: Parts): void {
	trail.settleSearch()
	keyring.lock()
	inventory.forget()
	keeper.forget()
	installation.forget()
}
