/** What the keys do on the questions: letters answer the one in hand, arrows walk. */
import type { KeyboardEvent } from 'react'

/** What a key may be asked for. */
export interface QuestionKeys {
	openId: string | undefined
	/** What a letter does to a question; undefined where it does nothing. */
	letter: (key: string, id: string) => (() => void) | undefined
	open: (id: string) => void
	step: (id: string, by: 1 | -1) => void
	/** On to the next question that is open. */
	goOn: () => void
	/** Back to the line of the question in hand. */
	back: () => void
}
/** What is typed into, or has keys of its own. */
const hasOwnKeys = (target: EventTarget): boolean =>
	target instanceof HTMLElement &&
	target.closest('input, select, textarea, [contenteditable=true], [data-own-keys]') !== null
/** The question on whose line the key was pressed; undefined where it was on none. */
const lineAt = (target: EventTarget): string | undefined =>
	target instanceof HTMLElement ? target.dataset.question : undefined

/** What a key on a line does beside its letters. */
function walk(key: string, id: string, { openId, step }: QuestionKeys): (() => void) | undefined {
	if (key === 'ArrowUp') return () => step(id, -1)
	if (key === 'ArrowDown' || (key === 'Enter' && id === openId)) return () => step(id, 1)
	return undefined
}
function calledFor(
	key: string,
	line: string | undefined,
	keys: QuestionKeys,
): (() => void) | undefined {
	const id = line ?? keys.openId
	if (id === undefined) return undefined
	const does = keys.letter(key, id)
	// what was not looked at is not settled by a key: it opens first
	if (does) return id === keys.openId ? does : () => keys.open(id)
	return line === undefined ? undefined : walk(key, line, keys)
}
/** Out of the fields: Enter goes on from a field of a change, Escape back to the line. */
function outOfFields(
	{ key, target }: KeyboardEvent<HTMLElement>,
	keys: QuestionKeys,
): (() => void) | undefined {
	if (key === 'Escape') return keys.back
	const isChanged =
		target instanceof HTMLInputElement && target.closest('[data-own-keys=change]') !== null
	return key === 'Enter' && isChanged ? keys.goOn : undefined
}
export const questionKeys = (keys: QuestionKeys) => (event: KeyboardEvent<HTMLElement>) => {
	if (event.ctrlKey || event.altKey || event.metaKey || event.defaultPrevented) return
	const run = hasOwnKeys(event.target)
		? outOfFields(event, keys)
		: calledFor(event.key, lineAt(event.target), keys)
	if (!run) return
	run()
	event.preventDefault()
	event.stopPropagation()
}
