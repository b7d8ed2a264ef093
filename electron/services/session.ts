import { SealBroken } from '../store/seal.ts'
import type { InputOf, OutputOf } from '../../shared/contract.ts'
import { loadState } from './load.ts'
import { type Deps, Refusal, type State } from './state.ts'

/** Wrong tries slow the next one down: 1, 2, 4 ... seconds, at most 5 minutes. */
export class Session {
	#wrong = 0
	#waitUntil = 0
	#busy = false
	readonly #deps: Deps
	readonly #state: State
	constructor(deps: Deps, state: State) { this.#deps = deps; this.#state = state }

	status(): OutputOf<'session.status'> {
		const { store, demo, version } = this.#deps
		return { state: !store.isSetUp ? 'needs-setup' : store.isOpen ? 'open' : 'locked', demo, version, warnings: this.#state.warnings, ...(this.#state.clinic ? { clinicName: this.#state.clinic.name } : {}) }
	}
	async setUp({ clinic, passphrase }: InputOf<'session.setUp'>): Promise<OutputOf<'session.setUp'>> {
		const { store, now } = this.#deps
		if (store.isSetUp) throw new Refusal('These records are set up already. Unlock them instead.')
		const recoveryKey = await this.#alone(() => store.setUp(passphrase))
		store.append({ kind: 'clinic', at: now().toISOString(), value: clinic })
		loadState(this.#state, this.#deps)
		return { recoveryKey }
	}
	unlock({ passphrase }: InputOf<'session.unlock'>) {
		return this.#try(() => this.#deps.store.unlock(passphrase), 'The passphrase is not right. Check the keyboard layout and try again, or use the printed recovery key.')
	}
	unlockWithRecoveryKey({ recoveryKey, newPassphrase }: InputOf<'session.unlockWithRecoveryKey'>) {
		return this.#try(() => this.#deps.store.unlockWithRecoveryKey(recoveryKey, newPassphrase), 'This recovery key belongs to other records. Check that the paper is from this clinic and this PC.')
	}
	lock() {
		this.#deps.store.lock()
		this.#state.clear()
		return {}
	}
	/** One stretching of a secret at a time: tries side by side would get round the wait, two set-ups would make two keys. */
	async #alone<T>(work: () => Promise<T>): Promise<T> {
		if (this.#busy) throw new Refusal('The last try is still being checked. Wait for its answer.')
		this.#busy = true
		try { return await work() } finally { this.#busy = false }
	}
	async #try(open: () => Promise<void>, wrong: string): Promise<Record<string, never>> {
		if (!this.#deps.store.isSetUp) throw new Refusal('These records have not been set up yet. Fill in the clinic and choose a passphrase first.')
		const now = this.#deps.now().getTime()
		if (now < this.#waitUntil) throw new Refusal(`Wait ${Math.ceil((this.#waitUntil - now) / 1000)} seconds before the next try.`)
		try {
			await this.#alone(open)
		} catch (error) {
			if (error instanceof RangeError) throw new Refusal(error.message)
			if (!(error instanceof SealBroken)) throw error
			this.#wrong++
			if (this.#wrong > 2) this.#waitUntil = this.#deps.now().getTime() + Math.min(300, 2 ** (this.#wrong - 3)) * 1000
			throw new Refusal(wrong)
		}
		this.#wrong = 0
		loadState(this.#state, this.#deps)
		return {}
	}
}
