import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { idleMs } from '../../../shared/desk/records/settings.ts'
import { SealBroken } from '../../store/seal.ts'
import { ownerSlot } from '../../store/store.ts'
import { loadSafely } from '../backups/arrival.ts'
import { needDrawable } from '../clinic/logo.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import { ensureOwner } from '../records/load.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { keepPerson } from './keep-person.ts'
import type { PersonEntry, PersonValue } from './memory.ts'

const pinCost = 2 ** 14
const pinLong = 32
const mostWrongPins = 3
const freeTries = 2
const longestWaitSeconds = 300
const stretchPin = (pin: string, salt: string): Promise<Buffer> =>
	new Promise((done, fail) =>
		scrypt(pin, salt, pinLong, { N: pinCost, r: 8, p: 1 }, (error, key) =>
			error ? fail(error) : done(key),
		),
	)

/**
 * Wrong tries slow the next one down: 1, 2, 4 ... seconds, at most 5 minutes; a restart does not
 * shorten the wait.
 */
export class Session {
	#wrongPins = 0
	#busy = false
	#aliveAt = 0
	readonly #deps: Deps
	readonly #memory: Memory
	constructor(deps: Deps, memory: Memory) {
		this.#deps = deps
		this.#memory = memory
	}

	status(): OutputOf<'session.status'> {
		const { store, demo, version } = this.#deps
		const { people, clinic, warnings } = this.#memory
		const person = store.isOpen ? people.atWork : undefined
		const waiting =
			store.auditWaiting > 0
				? [
						'The disk is full or not writable. Records can be read; nothing can be saved until ' +
							'there is room.',
					]
				: []
		return {
			state: !store.isSetUp ? 'needs-setup' : store.isOpen ? 'open' : 'locked',
			demo,
			version,
			warnings: [
				...(store.isOpen
					? [...warnings, ...clinic.notices(), ...this.#memory.restored.says]
					: store.notices),
				...waiting,
			],
			clinicName: clinic.letterhead?.name,
			person: person && { personId: person.personId, name: person.name, role: person.role },
		}
	}
	async setUp({
		clinic,
		passphrase,
	}: InputOf<'session.setUp'>): Promise<OutputOf<'session.setUp'>> {
		const { store } = this.#deps
		if (store.isSetUp) throw new Refusal('These records are set up already. Unlock them instead.')
		await needDrawable(this.#deps, clinic.logo, undefined, 'clinic.logo')
		const recoveryKey = await this.#alone(() => store.setUp(passphrase))
		const owner: PersonValue = {
			personId: 'owner',
			slot: ownerSlot,
			...clinic.clinician,
			role: 'owner',
			active: true,
		}
		this.#deps.keepTogether([
			{ kind: 'clinic', value: clinic },
			{ kind: 'person', value: owner },
		])
		this.#enter(ownerSlot)
		return { recoveryKey }
	}
	unlock({ passphrase }: InputOf<'session.unlock'>) {
		return this.#try(
			() => this.#deps.store.unlock(passphrase),
			'The passphrase is not right. Check the keyboard layout and try again, or use the printed ' +
				'recovery key.',
		)
	}
	unlockWithRecoveryKey({ recoveryKey, newPassphrase }: InputOf<'session.unlockWithRecoveryKey'>) {
		return this.#try(
			() => this.#deps.store.unlockWithRecoveryKey(recoveryKey, newPassphrase),
			'This recovery key belongs to other records. Check that the paper is from this clinic and ' +
				'this PC.',
		)
	}
	lock(why = 'by hand') {
		const { store } = this.#deps
		if (store.isOpen)
			try {
				store.audit({
					function: 'lock',
					purpose: why,
					personId: this.#memory.people.atWork?.personId ?? null,
					role: this.#memory.people.atWork?.role ?? 'nobody',
				})
			} catch {
				/* locking never fails for the sake of its row */
			}
		store.lock()
		this.#memory.clear()
		return {}
	}
	alive(): Record<string, never> {
		this.#aliveAt = this.#deps.now().getTime()
		return {}
	}
	/**
	 * Locks where nobody touched the workstation for as long as the setting says; a clock set back
	 * counts from now.
	 */
	lockIfIdle(): void {
		const now = this.#deps.now().getTime()
		if (now < this.#aliveAt) this.#aliveAt = now
		if (
			this.#deps.store.isOpen &&
			now - this.#aliveAt >= idleMs(this.#memory.clinic.settings.idleMinutes)
		)
			this.lock('left alone')
	}
	#enter(slot: string): void {
		const { store } = this.#deps
		loadSafely(this.#memory, this.#deps)
		ensureOwner(this.#memory, this.#deps)
		// the passphrase of a pack opens for whoever made it, not for the owner at home
		const { pack } = this.#memory.outreach
		const person = this.#memory.people
			.all()
			.find(
				(entry) =>
					entry.active &&
					(pack && slot === ownerSlot ? entry.personId === pack.personId : entry.slot === slot),
			)
		if (!person) {
			store.lock()
			this.#memory.clear()
			throw new Refusal(
				'The entry of this person cannot be read or was taken off. Ask the owner to open the ' +
					'records, or use the printed recovery key.',
			)
		}
		this.#memory.people.atWork = person
		this.#wrongPins = 0
		this.alive()
		store.audit({ function: 'unlock', personId: person.personId, role: person.role })
	}
	people(): OutputOf<'session.people'> {
		return {
			people: this.#memory.people
				.all()
				.filter((person) => person.active && person.pin)
				.map(({ personId, name, role }) => ({ personId, name, role })),
		}
	}
	/** Another person takes over at this PC; after three wrong PINs only a passphrase opens again. */
	async switch({ personId, pin }: InputOf<'session.switch'>): Promise<OutputOf<'session.switch'>> {
		const person = this.#memory.people.byId.get(personId)
		const stored = person?.active ? person.pin : undefined
		const right =
			stored !== undefined &&
			timingSafeEqual(
				await this.#alone(() => stretchPin(pin, stored.salt)),
				Buffer.from(stored.hash, 'hex'),
			)
		if (!person || !right) {
			this.#deps.store.audit({
				function: 'unlock-failed',
				purpose: 'PIN',
				outcome: 'refused',
				objectRef: `person:${personId}`,
			})
			if (++this.#wrongPins >= mostWrongPins) {
				this.lock('wrong PINs')
				throw new Refusal(
					'The PIN was wrong three times. The records are locked: unlock them with a passphrase.',
				)
			}
			throw new Refusal('The PIN is not right. Try again, or lock and use the passphrase.')
		}
		this.#wrongPins = 0
		this.#memory.people.atWork = person
		this.#deps.store.audit({ function: 'switch', personId: person.personId, role: person.role })
		return {}
	}
	async changePassphrase({
		old,
		passphrase,
	}: InputOf<'session.changePassphrase'>): Promise<OutputOf<'session.changePassphrase'>> {
		const person = await this.#known(old)
		await this.#set(person.slot, passphrase)
		this.#deps.store.audit({
			function: 'update',
			objectRef: `person:${person.personId}`,
			purpose: 'passphrase changed',
		})
		return {}
	}
	async setPin({
		passphrase,
		pin,
	}: InputOf<'session.setPin'>): Promise<OutputOf<'session.setPin'>> {
		const person = await this.#known(passphrase)
		const salt = randomBytes(16).toString('hex')
		keepPerson(this.#deps, {
			...person,
			pin: { salt, hash: (await stretchPin(pin, salt)).toString('hex') },
		})
		return {}
	}
	async #known(passphrase: string): Promise<PersonEntry> {
		const person = this.#memory.people.acts()
		this.#mayTry()
		if (await this.#alone(() => this.#deps.store.isPassphraseOf(person.slot, passphrase)))
			return person
		this.#wrongTry('passphrase of a person')
		throw new Refusal('This is not your present passphrase. Nothing was changed.')
	}
	async #set(slot: string, passphrase: string): Promise<void> {
		try {
			await this.#alone(() => this.#deps.store.setPassphrase(slot, passphrase))
		} catch (error) {
			if (error instanceof RangeError) throw new Refusal(error.message)
			throw error
		}
	}
	/** A new person's key slot, or a new passphrase for one. */
	givePassphrase(slot: string, passphrase: string): Promise<void> {
		return this.#set(slot, passphrase)
	}
	/**
	 * One stretching of a secret at a time: tries side by side would get round the wait, two set-ups
	 * would make two keys.
	 */
	async #alone<T>(work: () => Promise<T>): Promise<T> {
		if (this.#busy) throw new Refusal('The last try is still being checked. Wait for its answer.')
		this.#busy = true
		try {
			return await work()
		} finally {
			this.#busy = false
		}
	}
	#mayTry(): void {
		const now = this.#deps.now().getTime()
		const { lastMs, waitMs } = this.#deps.store.tries
		// a clock set back must not lock anyone out for longer than the wait itself
		const left = Math.min(lastMs + waitMs - now, waitMs)
		if (left > 0) throw new Refusal(`Wait ${Math.ceil(left / 1000)} seconds before the next try.`)
	}
	#wrongTry(what: string): void {
		const { store, now } = this.#deps
		const wrong = store.tries.wrong + 1
		store.together(() => {
			store.tries = {
				wrong,
				lastMs: now().getTime(),
				waitMs:
					wrong > freeTries ? Math.min(longestWaitSeconds, 2 ** (wrong - freeTries - 1)) * 1000 : 0,
			}
			store.audit({ function: 'unlock-failed', purpose: what, outcome: 'refused' })
		})
	}
	async #try(open: () => Promise<string>, wrong: string): Promise<Record<string, never>> {
		const { store } = this.#deps
		if (!store.isSetUp)
			throw new Refusal(
				'These records have not been set up yet. Fill in the clinic and choose a passphrase first.',
			)
		this.#mayTry()
		let slot: string
		try {
			slot = await this.#alone(open)
		} catch (error) {
			if (error instanceof RangeError) throw new Refusal(error.message)
			if (!(error instanceof SealBroken)) throw error
			this.#wrongTry('unlock')
			throw new Refusal(wrong)
		}
		await acting.run({ personId: null, role: 'nobody', purpose: '' }, async () => {
			// a full or read-only disk must not keep anyone from reading
			if (store.tries.wrong > 0)
				try {
					store.tries = { wrong: 0, lastMs: 0, waitMs: 0 }
				} catch {
					/* stays counted */
				}
			this.#enter(slot)
		})
		return {}
	}
}
