/** One's own passphrase and PIN, and the passphrase that the owner gives. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { namesToGuess } from '../../../shared/desk/people/names.ts'
import { easyPin } from '../../../shared/desk/people/pin.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { changeKeyWithSecret } from './data-key.ts'
import { keepPerson } from './keep-person.ts'
import type { PersonEntry } from './memory.ts'
import { aimedAt, ofStaff, triedAs } from './notices.ts'
import { digestOfPin } from './pin-digests.ts'
import type { Session } from './session.ts'
import { refuseWeak } from './weak.ts'

type Here = Pick<Memory, 'clinic' | 'people'>

/** The names that count as guessable in a passphrase of this clinic. */
export const namesHere = ({ clinic, people }: Here): string[] =>
	namesToGuess(clinic.letterhead, people.all())

/** The person as remembered now, who was at work before a wait. @throws Refusal where not any more */
export function stillAtWork({ people }: Pick<Memory, 'people'>, personId: string): PersonEntry {
	if (people.atWork?.personId !== personId)
		throw new Refusal(
			'people.locked-meanwhile',
			'The records were locked or handed over meanwhile. Nothing was changed: unlock them and do ' +
				'it again.',
		)
	return people.atWork
}
interface Given {
	passphrase: string
	/** of the passphrase among the entries */
	path: string
	/** further names that count as guessable */
	names?: readonly string[]
	/** writes what belongs to the new passphrase */
	fill: () => void
}
/**
 * Gives a slot a passphrase; the old one opens until the new one is known to, and what belongs to it
 * is written in one transaction with it.
 * @throws Refusal where it is weak, another person has it, or the records were locked meanwhile
 */
export async function givePassphrase(
	here: Here,
	{ store }: Deps,
	session: Session,
	slot: string,
	{ passphrase, path, names = [], fill }: Given,
): Promise<void> {
	const { personId } = here.people.acts()
	await session.tries.alone(async () => {
		await refuseWeak(passphrase, path, [...namesHere(here), ...names])
		stillAtWork(here, personId)
		try {
			await store.setPassphrase(slot, passphrase, () => {
				stillAtWork(here, personId)
				fill()
			})
		} catch (error) {
			if (error instanceof RangeError)
				throw new Refusal('people.cannot-change-secret', error.message)
			stillAtWork(here, personId)
			throw error
		}
	})
}
/** Who is at work, where the passphrase is theirs. @throws Refusal */
export async function ownPassphrase(
	{ people }: Pick<Memory, 'people'>,
	{ store }: Deps,
	session: Session,
	passphrase: string,
): Promise<PersonEntry> {
	const person = people.acts()
	session.tries.mayTry()
	if (await session.tries.alone(() => store.isPassphraseOf(person.slot, passphrase))) {
		const now = stillAtWork({ people }, person.personId)
		session.pinTries.forget(now.personId)
		return now
	}
	const { personId } = stillAtWork({ people }, person.personId)
	session.tries.wrongTry({ purpose: triedAs['own-passphrase'], objectRef: aimedAt(personId) })
	throw new Refusal(
		'people.wrong-passphrase',
		'This is not your present passphrase. Nothing was changed.',
	)
}
export async function changePassphrase(
	here: Here,
	deps: Deps,
	session: Session,
	{ old, passphrase }: InputOf<'session.changePassphrase'>,
): Promise<OutputOf<'session.changePassphrase'>> {
	const person = await ownPassphrase(here, deps, session, old)
	const fill = () => {
		session.passphraseDue(person.slot, undefined)
		changeKeyWithSecret(deps.store)
		deps.store.audit({
			function: 'update',
			objectRef: ofStaff(person.personId),
			purpose: 'passphrase changed',
		})
	}
	await givePassphrase(here, deps, session, person.slot, { passphrase, path: 'passphrase', fill })
	return {}
}
export async function setPin(
	here: Here,
	deps: Deps,
	session: Session,
	{ passphrase, pin }: InputOf<'session.setPin'>,
): Promise<OutputOf<'session.setPin'>> {
	const easy = easyPin(pin)
	if (easy)
		throw new Refusal('people.easy-pin', 'This PIN is easy to guess. Nothing was changed.', [
			{
				path: 'pin',
				message: `${easy}. Choose digits without a pattern, 4 to 10 of them`,
			},
		])
	const { personId } = await ownPassphrase(here, deps, session, passphrase)
	const digest = await digestOfPin(pin, deps.store.cost)
	keepPerson(deps, { ...stillAtWork(here, personId), pin: digest })
	return {}
}
