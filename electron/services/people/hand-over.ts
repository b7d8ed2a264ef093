/** Another person takes over at this PC by a PIN of their own. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type PinDigest, pinDigestSchema } from '../../../shared/desk/people/pin-digest.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { aimedAt, triedAs } from './failures.ts'
import { keepPerson } from './keep-person.ts'
import type { PersonEntry } from './memory.ts'
import { stillAtWork } from './own-secrets.ts'
import { digestOfPin, isCheap, isPin } from './pin-digests.ts'
import { mostWrongPins } from './pin-tries.ts'
import type { Session } from './session.ts'

type Here = Pick<Memory, 'people'>

/** Those who can take over at this PC by PIN. */
export const whoTakesOver = ({ people }: Here): OutputOf<'session.people'> => ({
	people: people
		.all()
		.filter((person) => person.active && person.pin)
		.map(({ personId, name, role }) => ({ personId, name, role })),
})
const barredWords = (name: string) =>
	`The PIN of ${name} was wrong ${mostWrongPins} times. Only their own passphrase lets them in ` +
	'now: lock, and unlock with it. The owner is told.'

/**
 * A switch to a person works only by that person's PIN, within the tries that are left for it.
 * @throws Refusal in words
 */
export async function handOver(
	here: Here,
	deps: Deps,
	session: Session,
	{ personId, pin }: InputOf<'session.switch'>,
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
		throw new Refusal(
			'people.wrong-pin',
			'The PIN is not right. Try again, or lock and use the passphrase.',
		)
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
		throw new Refusal(
			'people.wrong-pin',
			'The PIN is not right. Try again, or lock and use the passphrase.',
		)
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
