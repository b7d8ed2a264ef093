/** Alt+N: focus goes to the next thing this step waits for. */

const notAsked = 'button[value=not-asked]'
/**
 * The field of a path, or of what answers for it the first question that was not asked, else its
 * first control.
 */
const fieldOf = (within: HTMLElement, path: string): HTMLElement | null =>
	within.querySelector<HTMLElement>(`[data-path="${path}"]`) ??
	within.querySelector<HTMLElement>(
		`[data-answers="${path}"] [data-asked] ${notAsked}[aria-pressed=true]`,
	) ??
	within.querySelector<HTMLElement>(`[data-answers="${path}"] :is(input, select, button)`)
/** @param path of a field, or of a list or of questions that the step asks for */
export function focusField(within: HTMLElement | null, path: string): void {
	const field = within && fieldOf(within, path)
	field?.focus()
	field?.scrollIntoView({ block: 'nearest' })
}
/** A yes or a no stands there: it is asked no more. */
const isAnswered = (asked: HTMLElement): boolean =>
	asked.querySelector(`${notAsked}[aria-pressed=false]`) !== null
const seen = (element: HTMLElement): boolean => element.offsetParent !== null
/**
 * What is asked and not answered yet, in the order of the form: its first control, or the one of its
 * list that is chosen. @returns false where nothing is
 */
export function focusAsked(within: HTMLElement): boolean {
	const group = [...within.querySelectorAll<HTMLElement>('[data-asked]')].find(
		(asked) => seen(asked) && !isAnswered(asked) && !asked.contains(document.activeElement),
	)
	const control = group?.querySelector<HTMLElement>('input, textarea, button:not([disabled])')
	control?.focus()
	control?.scrollIntoView({ block: 'nearest' })
	return control !== null && control !== undefined
}
/**
 * @param within the step on screen; @param missing paths still to measure, in the order of the
 * walk; @returns false where nothing is left
 */
export function focusNext(within: HTMLElement, missing: readonly string[]): boolean {
	const focus = (element: HTMLElement | null | undefined): boolean => {
		element?.focus()
		element?.scrollIntoView({ block: 'nearest' })
		return element !== null && element !== undefined
	}
	for (const path of missing) {
		const field = fieldOf(within, path)
		if (field && field !== document.activeElement) return focus(field)
	}
	// a question that is not settled: it opens
	const open = ['open', 'overtaken'].map((state) => `[data-question][data-state=${state}]`)
	const question = within.querySelector<HTMLElement>(open.join(', '))
	if (question) {
		if (question.getAttribute('aria-expanded') === 'false') question.click()
		return focus(question)
	}
	if (focusAsked(within)) return true
	return focus(
		[
			...within.querySelectorAll<HTMLButtonElement>('button.MuiButton-contained:not([disabled])'),
		].find(seen),
	)
}
