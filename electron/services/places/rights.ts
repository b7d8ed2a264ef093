/** Who may choose a folder or a file: whoever may make the call that it is chosen for. */
import { type CallName, contract, type Role } from '../../../shared/contract.ts'
import { type Purpose, purposes } from '../../../shared/desk/places/purposes.table.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

/** A purpose serves a call of the contract; the compiler holds it to that. */
const served = Object.fromEntries(
	Object.entries(purposes).map(([purpose, { serves }]) => [purpose, serves satisfies CallName]),
) as Record<Purpose, CallName>

/**
 * @throws Refusal where who is at work may not. On a PC without records nobody is at work yet, and
 * what brings records to it may be chosen
 */
export function mustBeAllowed(
	{ people }: Pick<Memory, 'people'>,
	{ store }: Pick<Deps, 'store'>,
	purpose: Purpose,
): void {
	const person = people.atWork
	const role: Role = store.isOpen && person ? person.role : 'nobody'
	const { who } = contract[served[purpose]]
	if (role === 'nobody' && (store.isSetUp || !who.includes(role)))
		throw new Refusal('people.locked', 'The records are locked. Unlock them first.')
	if (who.includes(role)) return
	store.audit({ function: 'refused', objectRef: `places:${purpose}`, outcome: 'refused' })
	throw new Refusal(
		'call.not-for-this-role',
		`This is for ${who.filter((other) => other !== 'nobody').join(' or ')}. You work as ${role}: ` +
			'ask them, or switch the person.',
	)
}
