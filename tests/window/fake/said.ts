/** What the shell asked of the runtime, in order; and what a person would answer to its dialogs. */
export interface Said {
	what: string
	value?: unknown
}
export const said: Said[] = []
export const say = (what: string, value?: unknown): void => {
	said.push(value === undefined ? { what } : { what, value })
}
/** What was said of one thing. */
export const heard = (what: string): unknown[] =>
	said.filter((one) => one.what === what).map(({ value }) => value)

/** Answers to the next dialogs, first in first out; the first button where none is left. */
export const answers: { buttons: number[]; paths: (string | undefined)[] } = {
	buttons: [],
	paths: [],
}
