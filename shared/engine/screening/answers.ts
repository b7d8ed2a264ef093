/** Yes, no, or not asked (undefined): never taken for no. */
export type Tri = boolean | undefined

/** Yes only where every answer is yes; no as soon as one is no. */
export function allOf(...answers: Tri[]): Tri {
	if (answers.includes(false)) return false
	return answers.includes(undefined) ? undefined : true
}
/** Yes as soon as one answer is yes; no only where every answer is no. */
export function anyOf(...answers: Tri[]): Tri {
	if (answers.includes(true)) return true
	return answers.includes(undefined) ? undefined : false
}
/** The opposite answer; not asked stays not asked. */
export const not = (answer: Tri): Tri => (answer === undefined ? undefined : !answer)
/** Whether a measure lies above a limit in the same unit; undefined where it was not taken. */
export const above = (value: number | undefined, limit: number): Tri =>
	value === undefined ? undefined : value > limit
/** Whether a measure reaches a limit in the same unit; undefined where it was not taken. */
export const atLeast = (value: number | undefined, limit: number): Tri =>
	value === undefined ? undefined : value >= limit
