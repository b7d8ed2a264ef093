/** Whether the records are open, and who is at work: setting up, unlocking, locking. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { namesToGuess } from '../../../shared/desk/people/names.ts'
import { idleMs } from '../../../shared/desk/records/settings.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { SealBroken } from '../../store/seal.ts'
import { ownerSlot } from '../../store/store.ts'
import { loadSafely } from '../backups/arrival.ts'
import { needDrawable } from '../clinic/logo.ts'
import { needPrintableLetterhead } from '../clinic/printable.ts'
import { acting } from '../records/acting.ts'
import type { Deps } from '../records/deps.ts'
import { ensureOwner } from '../records/load.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { changeKeyWithSecret } from './data-key.ts'
import type { PersonEntry, PersonValue } from './memory.ts'
import { Notices, noticedAs, triedAs } from './notices.ts'
import { namesHere } from './own-secrets.ts'
import { PinTries } from './pin-tries.ts'
import { RecoveryPaper } from './recovery-paper.ts'
import { duePassphrases, keyChangeDue } from './sealed-notes.ts'
import { Tries } from './tries.ts'
import { refuseWeak, weakness } from './weak.ts'

type Told = NonNullable<OutputOf<'session.status'>['told']>

export class Session {
	readonly #deps: Deps
	readonly #memory: Memory
	readonly tries: Tries
	readonly pinTries: PinTries
	readonly paper: RecoveryPaper
	readonly notices: Notices
	#aliveAt = 0
	/** why the last unlocking was stopped though the secret was right */
	#stopped = ''
	constructor(deps: Deps, memory: Memory) {
		this.#deps = deps
		this.#memory = memory
		this.tries = new Tries(deps)
		this.pinTries = new PinTries(deps.store, () =>
			memory.people.all().map(({ personId }) => personId),
		)
		this.paper = new RecoveryPaper(deps)
		this.notices = new Notices(deps, memory.people)
	}

	/** Open means that somebody is at work: a call would be answered. */
	get #atWork(): PersonEntry | undefined {
		return this.#deps.store.isOpen ? this.#memory.people.atWork : undefined
	}
	status(): OutputOf<'session.status'> {
		const { store, demo, version } = this.#deps
		const { clinic, warnings } = this.#memory
		const person = this.#atWork
		const waiting =
			store.auditWaiting > 0
				? [
						'The disk is full or not writable. Records can be read; nothing can be saved until ' +
							'there is room.',
					]
				: []
		const stopped = this.#stopped ? [this.#stopped] : []
		return {
			state: !store.isSetUp ? 'needs-setup' : person ? 'open' : 'locked',
			demo,
			version,
			warnings: [
				...(person
					? [...warnings, ...clinic.notices(), ...this.#memory.restored.says]
					: [...store.notices, ...stopped]),
				...waiting,
			],
			clinicName: clinic.letterhead?.name,
			person: person && { personId: person.personId, name: person.name, role: person.role },
			...present({ told: person && this.#toldTo(person) }),
		}
	}
	/** A trail that cannot be read is something to look at: the page of the notices says why. */
	#unseenNotices(): number {
		try {
			return this.notices.unseen()
		} catch {
			return 1
		}
	}
	#toldTo({ slot, role }: PersonEntry): Told | undefined {
		const { store } = this.#deps
		const due = duePassphrases.read(store)
		const isOwner = role === 'owner'
		const told: Told = present({
			passphraseDue: due.state === 'read' ? due.value[slot] : undefined,
			recoveryKeyUnconfirmed: (isOwner && this.paper.isUnconfirmed) || undefined,
			keyChangeDue: (isOwner && this.#isKeyChangeDue()) || undefined,
			alarms: (isOwner && store.alarms().length > 0) || undefined,
			notices: (isOwner && this.#unseenNotices()) || undefined,
		})
		return Object.keys(told).length > 0 ? told : undefined
	}
	#isKeyChangeDue(): boolean {
		const due = keyChangeDue.read(this.#deps.store)
		return due.state === 'read' && due.value !== null
	}
	/**
	 * Clinic, owner, keys and the note that nobody confirmed the recovery key: in one transaction, so
	 * that all of it happened or nothing.
	 */
	async setUp({
		clinic,
		passphrase,
	}: InputOf<'session.setUp'>): Promise<OutputOf<'session.setUp'>> {
		const { store, keepTogether, demo } = this.#deps
		if (store.isSetUp)
			throw new Refusal(
				'people.set-up-already',
				'These records are set up already. Unlock them instead.',
			)
		needPrintableLetterhead(clinic, 'clinic.')
		await needDrawable(this.#deps, clinic.logo, undefined, 'clinic.logo')
		const owner: PersonValue = {
			personId: 'owner',
			slot: ownerSlot,
			...clinic.clinician,
			role: 'owner',
			active: true,
		}
		const fill = () => {
			keepTogether([
				{ kind: 'clinic', value: clinic },
				{ kind: 'person', value: owner },
			])
			this.paper.noteUnconfirmed()
		}
		try {
			const recoveryKey = await this.tries.alone(async () => {
				// the passphrase of the demo is told to everybody
				if (!demo) await refuseWeak(passphrase, 'passphrase', namesToGuess(clinic))
				return store.setUp(passphrase, fill)
			})
			this.#enter(ownerSlot)
			this.paper.show(recoveryKey)
			return { recoveryKey }
		} catch (error) {
			// what a set-up remembered that did not happen
			if (!this.#atWork) this.#memory.clear()
			throw error
		}
	}
	unlock({ passphrase }: InputOf<'session.unlock'>) {
		return this.#try(
			() => this.#deps.store.unlock(passphrase),
			'The passphrase is not right. Check the keyboard layout and try again, or use the printed ' +
				'recovery key.',
		)
	}
	async unlockWithRecoveryKey({
		recoveryKey,
		newPassphrase,
	}: InputOf<'session.unlockWithRecoveryKey'>) {
		const { store } = this.#deps
		if (store.isSetUp) await refuseWeak(newPassphrase, 'newPassphrase', [])
		await this.#try(
			() => store.unlockWithRecoveryKey(recoveryKey, newPassphrase),
			'This recovery key belongs to other records. Check that the paper is from this clinic and ' +
				'this PC.',
		)
		store.together(() => {
			this.paper.wasUsed()
			store.audit({
				function: 'update',
				objectRef: 'recovery-key',
				purpose: noticedAs['recovery-key-used'],
			})
			changeKeyWithSecret(store)
		})
		// the names stand in the records, which were locked until now
		const weak = await weakness(newPassphrase, namesHere(this.#memory))
		if (weak && this.#atWork) this.passphraseDue(ownerSlot, 'weak')
		return {}
	}
	/** Notes that the person of a slot should choose a new passphrase, or has. */
	passphraseDue(slot: string, why: 'given' | 'weak' | undefined): void {
		const { store } = this.#deps
		const read = duePassphrases.read(store)
		const { [slot]: before, ...others } = read.state === 'read' ? read.value : {}
		if (before !== why) duePassphrases.write(store, why ? { ...others, [slot]: why } : others)
	}
	lock(why = 'by hand') {
		const { store } = this.#deps
		const person = this.#memory.people.atWork
		if (store.isOpen)
			try {
				store.audit({
					function: 'lock',
					purpose: why,
					personId: person?.personId ?? null,
					role: person?.role ?? 'nobody',
				})
			} catch {
				/* locking never fails for the sake of its row */
			}
		this.#shut()
		return {}
	}
	#shut(): void {
		this.#deps.store.lock()
		this.#memory.clear()
		this.notices.forget()
		this.paper.forget()
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
		if (this.#atWork && now - this.#aliveAt >= idleMs(this.#memory.clinic.settings.idleMinutes))
			this.lock('left alone')
	}
	/**
	 * Reads the records for who holds the slot. Where that fails they are locked again: nobody meets
	 * records that are open and answer nothing.
	 */
	#enter(slot: string): void {
		try {
			this.#stopped = ''
			this.#readFor(slot)
		} catch (error) {
			this.#shut()
			if (!(error instanceof Refusal))
				this.#stopped =
					'The last unlocking was stopped: the secret was right, but the records could not be ' +
					'read. They are locked again, and nothing was changed. Start Lastwright anew and try ' +
					'again; if it stays, bring back the newest backup.'
			throw error
		}
	}
	#readFor(slot: string): void {
		const { people } = this.#memory
		loadSafely(this.#memory, this.#deps)
		ensureOwner(this.#memory, this.#deps)
		// the passphrase of a pack opens for whoever made it, not for the owner at home
		const { pack } = this.#memory.outreach
		const person = people
			.all()
			.find(
				(entry) =>
					entry.active &&
					(pack && slot === ownerSlot ? entry.personId === pack.personId : entry.slot === slot),
			)
		if (!person)
			throw new Refusal(
				'people.unreadable-entry',
				'The entry of this person cannot be read or was taken off. Ask the owner to open the ' +
					'records, or use the printed recovery key.',
			)
		this.begins(person)
		this.#deps.store.audit({ function: 'unlock', personId: person.personId, role: person.role })
		// a full or read-only disk must not keep anyone from reading
		try {
			this.pinTries.forget(person.personId)
		} catch {
			/* stays counted */
		}
	}
	/** A person is at work from now on. */
	begins(person: PersonEntry): void {
		this.#memory.people.atWork = person
		this.alive()
	}
	async #try(open: () => Promise<string>, wrong: string): Promise<Record<string, never>> {
		const { store } = this.#deps
		if (!store.isSetUp)
			throw new Refusal(
				'people.not-set-up',
				'These records have not been set up yet. Fill in the clinic and choose a passphrase first.',
			)
		this.tries.mayTry()
		let slot: string
		try {
			slot = await this.tries.alone(open)
		} catch (error) {
			if (error instanceof RangeError) throw new Refusal('people.cannot-unlock', error.message)
			if (!(error instanceof SealBroken)) throw error
			this.tries.wrongTry({ purpose: triedAs.unlock })
			throw new Refusal('people.wrong-passphrase', wrong)
		}
		await acting.run({ personId: null, role: 'nobody', purpose: '' }, async () => {
			this.tries.rightTry()
			this.#enter(slot)
		})
		return {}
	}
}
