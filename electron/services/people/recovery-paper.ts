/**
 * The printed recovery key: issued, shown once, and confirmed by typing part of it. A paper that
 * somebody confirmed opens until the next one is confirmed; one that nobody may hold is replaced at
 * once.
 */
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { changeKeyWithSecret } from './data-key.ts'
import { issuedAndConfirmed, noticedAs } from './notices.ts'
import { recoveryNote } from './sealed-notes.ts'

const groupsOf = (printed: string): string[] => printed.split('-')
/** As readRecoveryKey reads it: letters that look like digits are digits. */
const plain = (typed: string): string =>
	typed.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1')

interface Shown {
	printed: string
	/** puts it into the place of the paper before; absent where it stands there already */
	putInPlace?: () => void
}

export class RecoveryPaper {
	readonly #store: Deps['store']
	#shown: Shown | undefined
	constructor({ store }: Pick<Deps, 'store'>) {
		this.#store = store
	}
	get isUnconfirmed(): boolean {
		const note = recoveryNote.read(this.#store)
		return note.state === 'damaged' || (note.state === 'read' && note.value.state === 'unconfirmed')
	}
	/** Belongs into the transaction that makes the key. */
	noteUnconfirmed(): void {
		recoveryNote.write(this.#store, { state: 'unconfirmed' })
	}
	/** The key that the set-up made is on the screen now. */
	show(printed: string): void {
		this.#shown = { printed }
	}
	/** Somebody opened with it: it is in their hands. */
	wasUsed(): void {
		if (this.isUnconfirmed) recoveryNote.write(this.#store, { state: 'confirmed' })
	}
	/** Nobody is at work: what was shown is forgotten. */
	forget(): void {
		this.#shown = undefined
	}
	/** The key of the records changed: a new paper that is not confirmed yet cannot open it any more. */
	dropPending(): void {
		if (this.#shown?.putInPlace) this.#shown = undefined
	}
	/**
	 * @param mayGoOn throws where the records were locked while the new key was made
	 * @returns the new key, to be shown and printed
	 */
	async issue(mayGoOn: () => unknown): Promise<string> {
		const { printed, confirm } = await this.#store.newRecoveryKey()
		mayGoOn()
		const note = recoveryNote.read(this.#store)
		const isHeld = note.state === 'read' && note.value.state === 'confirmed'
		if (isHeld) this.#shown = { printed, putInPlace: confirm }
		else {
			this.#store.together(() => {
				confirm()
				changeKeyWithSecret(this.#store)
				this.noteUnconfirmed()
				this.#audit(noticedAs['recovery-key-issued'])
			})
			this.#shown = { printed }
		}
		return printed
	}
	/**
	 * @param typed groups of the paper by their number from 1
	 * @throws Refusal naming the group that differs
	 */
	confirm(typed: readonly { group: number; typed: string }[]): void {
		const shown = this.#shown
		if (!shown)
			throw new Refusal(
				'people.recovery-key-gone',
				'The recovery key is not on the screen any more. Issue a new one under My access; the ' +
					'page that was printed last may not open.',
			)
		const groups = groupsOf(shown.printed)
		for (const [index, given] of typed.entries())
			if (plain(given.typed) !== groups[given.group - 1])
				throw new Refusal('people.recovery-key-differs', 'The recovery key is not confirmed yet.', [
					{
						path: `groups.${index}.typed`,
						message:
							`Group ${given.group} differs from the one that was shown. Compare it with the ` +
							'printed page letter by letter.',
					},
				])
		this.#store.together(() => {
			if (shown.putInPlace) {
				shown.putInPlace()
				changeKeyWithSecret(this.#store)
			}
			recoveryNote.write(this.#store, { state: 'confirmed' })
			this.#audit(shown.putInPlace ? issuedAndConfirmed : 'recovery key confirmed')
		})
		this.#shown = { printed: shown.printed }
	}
	#audit(purpose: string): void {
		this.#store.audit({ function: 'update', objectRef: 'recovery-key', purpose })
	}
}
