/** Another person takes over at this PC: by a PIN of their own, or by their passphrase. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type PinDigest, pinDigestSchema } from '../../../shared/desk/people/pin-digest.ts'
import { ownerSlot } from '../../store/store.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { keepPerson } from './keep-person.ts'
import type { PersonEntry } from './memory.ts'
import { aimedAt, triedAs } from './notices.ts'
import { stillAtWork } from './own-secrets.ts'
import { digestOfPin, isCheap, isPin } from './pin-digests.ts'
import { mostWrongPins } from './pin-tries.ts'
import type { Session } from './session.ts'

const wrongPin = 'The PIN is not right. Type it again, or take over by the passphrase.'

type Here = Pick<Memory, 'outreach' | 'people'>

/**
 * The slot that the passphrase of a person opens here; undefined where none does. The passphrase of
 * a pack is that of whoever made it, whatever the slot is called at home.
 */
function slotHere({ outreach: { pack } }: Here, { personId, slot }: PersonEntry) {
	if (!pack) return slot
	return personId === pack.personId ? ownerSlot : undefined
}
/** Those who can take over at this PC. */
export const whoTakesOver = (here: Here): OutputOf<'session.people'> => ({
	people: here.people
		.all()
		.filter((person) => person.active && (person.pin || slotHere(here, person) !== undefined))
		.map(({ personId, name, role, pin }) => ({ personId, name, role, hasPin: pin !== undefined })),
})
const barredWords = (name: string) =>
	`The PIN of ${name} was wrong ${mostWrongPins} times. Only their own passphrase lets them in ` +
	'now. The owner is told.'

/**
 * A switch to a person works only by that person's PIN, within the tries that are left for it, or by
 * their passphrase. @throws Refusal in words
 */
export const handOver = (
	here: Here,
	deps: Deps,
	session: Session,
	{ personId, pin, passphrase }: InputOf<'session.switch'>,
): Promise<OutputOf<'session.switch'>> =>
	passphrase === undefined
		? byPin(here, deps, session, personId, pin ?? '')
		: byPassphrase(here, deps, session, personId, passphrase)

/** Wrong passphrases slow down the next try here as they do at the locked PC. */
async function byPassphrase(
	here: Here,
	{ store }: Deps,
	session: Session,
	personId: string,
	passphrase: string,
): Promise<OutputOf<'session.switch'>> {
	const before = here.people.acts().personId
	const person = here.people.byId.get(personId)
	const slot = person?.active ? slotHere(here, person) : undefined
	session.tries.mayTry()
	const right = await session.tries.alone(
		async () => slot !== undefined && (await store.isPassphraseOf(slot, passphrase)),
	)
	stillAtWork(here, before)
	const now = here.people.byId.get(personId)
	if (!right || !now?.active) {
		session.tries.wrongTry({ purpose: triedAs['hand-over'], objectRef: aimedAt(personId) })
		throw new Refusal(
			'people.wrong-passphrase',
			'This is not the passphrase of the person who was chosen. Choose who takes over, check the ' +
				'keyboard layout, and type it again.',
		)
	}
	session.tries.rightTry()
	session.pinTries.forget(personId)
	session.begins(now)
	store.audit({ function: 'switch', personId, role: now.role })
	return {}
}
async function byPin(
	here: Here,
	deps: Deps,
	session: Session,
	personId: string,
	pin: string,
): Promise<OutputOf<'session.switch'>> {
	const { store } = deps
	const before = here.people.acts().personId
	const wrongTry = () =>
		store.audit({
			function: 'unlock-failed',
			purpose: triedAs.pin,
			outcome: 'refused',
			objectRef: aimedAt(personId),
		})
	const person = here.people.byId.get(personId)
	const digest = pinDigestSchema.safeParse(person?.active ? person.pin : undefined).data
	if (!person || !digest) {
		wrongTry()
		throw new Refusal('people.wrong-pin', wrongPin)
	}
	if (session.pinTries.isBarred(personId)) {
		wrongTry()
		throw new Refusal('people.barred', barredWords(person.name))
	}
	const right = await session.tries.alone(() => {
		session.pinTries.count(personId)
		return isPin(pin, digest)
	})
	stillAtWork(here, before)
	if (!right) {
		wrongTry()
		if (session.pinTries.isBarred(personId))
			throw new Refusal('people.barred', barredWords(person.name))
		throw new Refusal('people.wrong-pin', wrongPin)
	}
	const now = here.people.byId.get(personId)
	if (!now?.active || now.pin?.hash !== digest.hash)
		throw new Refusal(
			'people.changed-meanwhile',
			`The entry of ${person.name} was changed meanwhile. Try again.`,
		)
	session.pinTries.giveBack(personId)
	session.begins(now)
	store.audit({ function: 'switch', personId, role: now.role })
	await renew(here, deps, now, pin, digest)
	return {}
}
/** Stretches a PIN anew that an earlier version stretched less, as the work of its person. */
async function renew(here: Here, deps: Deps, person: PersonEntry, pin: string, digest: PinDigest) {
	if (!isCheap(digest, deps.store.cost)) return
	const { personId, role } = person
	const stronger = await digestOfPin(pin, deps.store.cost)
	// the person may have chosen another one, or gone, during the stretching
	if (here.people.atWork?.pin?.hash !== digest.hash) return
	acting.run({ personId, role, purpose: 'session.switch' }, () =>
		keepPerson(deps, { ...person, pin: stronger }),
	)
}
