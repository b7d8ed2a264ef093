/** Who works here: the list, adding and changing a person, taking one off. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { personProblems } from '../../../shared/desk/records/people.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { ownerSlot } from '../../store/store.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { needPrintable } from '../records/on-paper.ts'
import { Refusal } from '../records/refusal.ts'
import { changeKeyWithPerson, changeKeyWithSecret, needNewPassphrase } from './data-key.ts'
import { keepPerson } from './keep-person.ts'
import { handOutbox } from './leaving.ts'
import { noticedAs, ofStaff } from './notices.ts'
import { givePassphrase } from './own-secrets.ts'
import type { Session } from './session.ts'

type Here = Pick<Memory, 'clinic' | 'outbox' | 'people' | 'players'>

export function listPeople(
	{ people }: Here,
	{ store }: Deps,
	{ pinTries }: Session,
): OutputOf<'people.list'> {
	const old = store.slotsOfOldForm()
	return {
		people: people.all().map(({ personId, name, registration, role, active, pin, slot }) => ({
			personId,
			name,
			registration,
			role,
			active,
			hasPin: pin !== undefined,
			...present({
				pinBarred: (active && pin && pinTries.isBarred(personId)) || undefined,
				oldKey: (active && old.includes(slot)) || undefined,
			}),
		})),
	}
}
const missingPassphrase = 'missing, given nothing, allowed: 8 characters or more'

/**
 * A new person gets a key slot of their own; a passphrase given later replaces a forgotten one. The
 * person is asked to change what the owner gave.
 */
export async function savePerson(
	here: Here,
	deps: Deps,
	session: Session,
	{ personId, name, registration, role, passphrase }: InputOf<'people.save'>,
): Promise<OutputOf<'people.save'>> {
	const { people } = here
	needPrintable({ name, registration })
	const known = personId === undefined ? undefined : people.byId.get(personId)
	if (personId !== undefined && !known)
		throw new Refusal('people.unknown', 'This person is not in the list. Open the list again.')
	if (known?.slot === ownerSlot)
		throw new Refusal(
			'people.owner-by-letterhead',
			'The owner is the clinician of the letterhead: change the name there, and the passphrase ' +
				'under your own name.',
		)
	if (!known && passphrase === undefined)
		throw new Refusal(
			'people.passphrase-missing',
			'A new person needs a passphrase to begin with.',
			[
				{
					path: 'passphrase',
					message: `${missingPassphrase}; the person changes it at the first unlock`,
				},
			],
		)
	if (known && !known.active && passphrase === undefined)
		throw new Refusal(
			'people.passphrase-missing',
			'This person was taken off. Give a new passphrase to let them in again.',
			[{ path: 'passphrase', message: missingPassphrase }],
		)
	const problems = personProblems({ role, registration })
	if (problems.length)
		throw new Refusal(
			'people.entries-cannot-stand',
			'Some entries cannot stand. Nothing was changed.',
			problems,
		)
	const id = personId ?? randomUUID()
	const slot = known?.slot ?? `person-${id}`
	const keepEntry = () => {
		const now = people.byId.get(id)
		keepPerson(deps, {
			personId: id,
			slot,
			name,
			registration,
			role,
			active: true,
			recordId: now?.recordId,
			pin: now?.pin,
		})
	}
	if (passphrase === undefined) keepEntry()
	else
		await givePassphrase(here, deps, session, slot, {
			passphrase,
			path: 'passphrase',
			names: [name, registration],
			fill: () => {
				session.passphraseDue(slot, 'given')
				if (known) changeKeyWithSecret(deps.store)
				keepEntry()
				tellOwner(deps, id, known ? 'passphrase-given' : 'person-added')
			},
		})
	return { personId: id }
}
/** A row by which the owner hears of it, whoever sat at the owner's session. */
function tellOwner({ store }: Deps, personId: string, what: keyof typeof noticedAs): void {
	store.audit({ function: 'update', objectRef: ofStaff(personId), purpose: noticedAs[what] })
}
/**
 * Takes a person's slot and changes the key of the records, in one transaction: what they copied
 * before opens nothing that is written from now on.
 */
export function retirePerson(
	here: Here,
	deps: Deps,
	session: Session,
	{ personId, outboxTo }: InputOf<'people.retire'>,
): OutputOf<'people.retire'> {
	const { people } = here
	const known = people.byId.get(personId)
	if (!known?.active)
		throw new Refusal('people.unknown', 'This person is not in the list, or was taken off already.')
	if (known.slot === ownerSlot)
		throw new Refusal('people.owner-stays', 'The owner cannot be taken off.')
	const { changed, handedOver } = deps.store.together(() => {
		const handed = outboxTo === undefined ? 0 : handOutbox(here, deps, known, outboxTo)
		deps.store.dropSlot(known.slot)
		session.pinTries.forget(personId)
		session.passphraseDue(known.slot, undefined)
		const isChanged = changeKeyWithPerson(deps, session)
		keepPerson(deps, { ...known, active: false, pin: undefined })
		tellOwner(deps, personId, 'person-off')
		return { changed: isChanged, handedOver: handed || undefined }
	})
	return present({
		keyNotChanged: !changed || undefined,
		needNewPassphrase: changed ? needNewPassphrase({ people }, deps) : undefined,
		handedOver,
	})
}
