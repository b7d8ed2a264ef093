import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { personProblems } from '../../../shared/desk/records/people.ts'
import { ownerSlot } from '../../store/store.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { keepPerson } from './keep-person.ts'
import type { Session } from './session.ts'

export function listPeople({ people }: Pick<Memory, 'people'>): OutputOf<'people.list'> {
	return {
		people: people.all().map(({ personId, name, registration, role, active, pin }) => ({
			personId,
			name,
			registration,
			role,
			active,
			hasPin: pin !== undefined,
		})),
	}
}
/** A new person gets a key slot of their own; a passphrase given later replaces a forgotten one. */
export async function savePerson(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	session: Session,
	{ personId, name, registration, role, passphrase }: InputOf<'people.save'>,
): Promise<OutputOf<'people.save'>> {
	const known = personId === undefined ? undefined : people.byId.get(personId)
	if (personId !== undefined && !known)
		throw new Refusal('This person is not in the list. Open the list again.')
	if (known?.slot === ownerSlot)
		throw new Refusal(
			'The owner is the clinician of the letterhead: change the name there, and the passphrase ' +
				'under your own name.',
		)
	if (!known && passphrase === undefined)
		throw new Refusal('A new person needs a passphrase to begin with.', [
			{
				path: 'passphrase',
				message:
					'missing, given nothing, allowed: 8 characters or more; the person changes it at the ' +
					'first unlock',
			},
		])
	const problems = personProblems({ role, registration })
	if (problems.length)
		throw new Refusal('Some entries cannot stand. Nothing was changed.', problems)
	const id = personId ?? randomUUID()
	const slot = known?.slot ?? `person-${id}`
	// the slot first: an entry without a key would be a person who cannot unlock
	if (passphrase !== undefined) await session.givePassphrase(slot, passphrase)
	else if (known && !known.active)
		throw new Refusal('This person was taken off. Give a new passphrase to let them in again.', [
			{ path: 'passphrase', message: 'missing, given nothing, allowed: 8 characters or more' },
		])
	keepPerson(deps, {
		personId: id,
		slot,
		name,
		registration,
		role,
		active: true,
		recordId: known?.recordId,
		pin: known?.pin,
	})
	return { personId: id }
}
export function retirePerson(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	{ personId }: InputOf<'people.retire'>,
): OutputOf<'people.retire'> {
	const known = people.byId.get(personId)
	if (!known?.active) throw new Refusal('This person is not in the list, or was taken off already.')
	if (known.slot === ownerSlot) throw new Refusal('The owner cannot be taken off.')
	deps.store.together(() => {
		deps.store.dropSlot(known.slot)
		keepPerson(deps, { ...known, active: false, pin: undefined })
	})
	return {}
}
