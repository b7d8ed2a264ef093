import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { personProblems } from '../../../shared/desk/records/people.ts'
import { ownerSlot } from '../../store/store.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { putPerson, type Session } from './session.ts'

export function listPeople(state: State): OutputOf<'people.list'> {
	return {
		people: [...state.people.values()].map(
			({ personId, name, registration, role, active, pin }) => ({
				personId,
				name,
				registration,
				role,
				active,
				hasPin: pin !== undefined,
			}),
		),
	}
}
/** A new person gets a key slot of their own; a passphrase given later replaces a forgotten one. */
export async function savePerson(
	state: State,
	deps: Deps,
	session: Session,
	{ personId, name, registration, role, passphrase }: InputOf<'people.save'>,
): Promise<OutputOf<'people.save'>> {
	const known = personId === undefined ? undefined : state.people.get(personId)
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
	putPerson(state, deps, {
		personId: id,
		slot,
		name,
		registration,
		role,
		active: true,
		...(known ? { recordId: known.recordId, pin: known.pin } : {}),
	})
	return { personId: id }
}
export function retirePerson(
	state: State,
	deps: Deps,
	{ personId }: InputOf<'people.retire'>,
): OutputOf<'people.retire'> {
	const known = state.people.get(personId)
	if (!known?.active) throw new Refusal('This person is not in the list, or was taken off already.')
	if (known.slot === ownerSlot) throw new Refusal('The owner cannot be taken off.')
	deps.store.together(() => {
		deps.store.dropSlot(known.slot)
		putPerson(state, deps, { ...known, active: false, pin: undefined })
	})
	return {}
}
