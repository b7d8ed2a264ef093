/** What undo can go back to: the draft before each entry, in memory only, until it is signed. */
import type { DraftContent } from '../../../shared/contract.ts'
import { changedPath } from '../../parts/draft-path.ts'

/** Keys typed into one field within this time are one entry. */
const oneEntryMs = 4000
const most = 300

/**
 * The part of a path that one field answers for: a value, its raw text and its mark count together.
 */
const fieldOf = (path: string): string => path.replace(/^(visit\.notMeasured|raw|visit)\./, '')

export class History {
	#past: DraftContent[] = []
	#future: DraftContent[] = []
	#last = { path: '', atMs: 0 }
	/** Keeps the draft before a change; moving between steps is no entry. */
	note(before: DraftContent, after: DraftContent, atMs: number): void {
		const { step: _, ...was } = before
		const { step: __, ...is } = after
		const path = fieldOf(changedPath(was, is))
		if (path === '') return
		const same = path === this.#last.path && atMs - this.#last.atMs < oneEntryMs
		this.#last = { path, atMs }
		this.#future = []
		if (!same) this.#past = [...this.#past.slice(1 - most), before]
	}
	back(now: DraftContent): DraftContent | undefined {
		return this.#move(this.#past, this.#future, now)
	}
	forward(now: DraftContent): DraftContent | undefined {
		return this.#move(this.#future, this.#past, now)
	}
	#move(from: DraftContent[], to: DraftContent[], now: DraftContent): DraftContent | undefined {
		const found = from.pop()
		if (!found) return undefined
		to.push(now)
		this.#last = { path: '', atMs: 0 }
		// the step on screen stays
		const { step: _, ...rest } = found
		return { ...rest, ...(now.step === undefined ? {} : { step: now.step }) }
	}
}
