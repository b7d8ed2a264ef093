/**
 * What undo can go back to: what the draft was before and after each entry made here, in memory
 * only, until it is signed. What others typed meanwhile is never taken back.
 */
import type { DraftContent } from '../../../shared/contract.ts'
import { joinTyped, sameEntries } from '../../../shared/desk/visits/join-typed.ts'
import { changedPath } from '../../parts/draft-path.ts'

/** Keys typed into one field within this time are one entry. */
const oneEntryMs = 4000
const most = 300

/**
 * The part of a path that one field answers for: a value, its raw text and its mark count together.
 */
const fieldOf = (path: string): string => path.replace(/^(visit\.notMeasured|raw|visit)\./, '')

interface Made {
	before: DraftContent
	after: DraftContent
}
/** The draft with what changed between two states of it; what differs from the first stays. */
function moved(from: DraftContent, to: DraftContent, now: DraftContent): DraftContent | undefined {
	const { step } = now
	const { step: _, ...rest } = to
	// the step on screen stays
	if (now === from) return { ...rest, ...(step === undefined ? {} : { step }) }
	const join = joinTyped({ base: from, mine: now, theirs: to })
	if ('problems' in join || sameEntries(join.content, now)) return undefined
	const { content } = join
	return { ...content, visit: { ...content.visit, player: now.visit.player } }
}

export class History {
	#past: Made[] = []
	#future: Made[] = []
	#last = { path: '', atMs: 0 }
	/** Keeps the draft before and after a change; moving between steps is no entry. */
	note(before: DraftContent, after: DraftContent, atMs: number): void {
		const { step: _, ...was } = before
		const { step: __, ...is } = after
		const path = fieldOf(changedPath(was, is))
		const made = this.#past.at(-1)
		if (path === '') {
			// the state is another, its entries are the same
			if (made?.after === before) made.after = after
			return
		}
		const same = path === this.#last.path && atMs - this.#last.atMs < oneEntryMs
		this.#last = { path, atMs }
		this.#future = []
		if (same && made?.after === before) made.after = after
		else this.#past = [...this.#past.slice(1 - most), { before, after }]
	}
	back(now: DraftContent): DraftContent | undefined {
		return this.#move(this.#past, this.#future, now, 'before')
	}
	forward(now: DraftContent): DraftContent | undefined {
		return this.#move(this.#future, this.#past, now, 'after')
	}
	/** An entry that others wrote over is passed by. */
	#move(from: Made[], to: Made[], now: DraftContent, way: keyof Made): DraftContent | undefined {
		this.#last = { path: '', atMs: 0 }
		for (let made = from.pop(); made; made = from.pop()) {
			const [was, is] = way === 'before' ? [made.after, made.before] : [made.before, made.after]
			const next = moved(was, is, now)
			if (!next) continue
			to.push(way === 'before' ? { before: next, after: now } : { before: now, after: next })
			return next
		}
		return undefined
	}
}
