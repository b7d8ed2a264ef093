/**
 * Tries of a secret: one at a time, and wrong ones slow the next one down: 1, 2, 4 ... seconds, at
 * most 5 minutes; a restart does not shorten the wait.
 */
import { amount } from '../../../shared/engine/words/en/format.ts'
import type { AuditNote } from '../../store/trail.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'

const freeTries = 2
const longestWaitSeconds = 300

export class Tries {
	readonly #deps: Pick<Deps, 'store' | 'now'>
	#busy = false
	constructor(deps: Pick<Deps, 'store' | 'now'>) {
		this.#deps = deps
	}
	/**
	 * One stretching of a secret at a time: tries side by side would get round the wait, two set-ups
	 * would make two keys. @throws Refusal while another one runs
	 */
	async alone<T>(work: () => Promise<T>): Promise<T> {
		if (this.#busy)
			throw new Refusal(
				'people.try-under-way',
				'The last try is still being checked. Wait for its answer.',
			)
		this.#busy = true
		try {
			return await work()
		} finally {
			this.#busy = false
		}
	}
	/** @throws Refusal naming the wait */
	mayTry(): void {
		const now = this.#deps.now().getTime()
		const { lastMs, waitMs } = this.#deps.store.tries
		// a clock set back must not lock anyone out for longer than the wait itself
		const left = Math.min(lastMs + waitMs - now, waitMs)
		if (left > 0)
			throw new Refusal(
				'people.wait',
				`Wait ${amount(Math.ceil(left / 1000), 'seconds')} before the next try.`,
			)
	}
	/** Counts a wrong try and writes it into the audit trail. */
	wrongTry(what: Omit<AuditNote, 'function' | 'outcome'>): void {
		const { store, now } = this.#deps
		const wrong = store.tries.wrong + 1
		store.together(() => {
			store.tries = {
				wrong,
				lastMs: now().getTime(),
				waitMs:
					wrong > freeTries ? Math.min(longestWaitSeconds, 2 ** (wrong - freeTries - 1)) * 1000 : 0,
			}
			store.audit({ ...what, function: 'unlock-failed', outcome: 'refused' })
		})
	}
	/** A right one: the next wrong ones count from the start. */
	rightTry(): void {
		const { store } = this.#deps
		if (store.tries.wrong === 0) return
		try {
			store.tries = { wrong: 0, lastMs: 0, waitMs: 0 }
		} catch {
			// a full or read-only disk must not keep anyone from reading: they stay counted
		}
	}
}
