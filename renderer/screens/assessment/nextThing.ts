/** Alt+N: focus goes to the next thing this step waits for. */

const seen = (element: HTMLElement): boolean => element.offsetParent !== null
/**
 * What is asked and not answered yet, in the order of the form: its first control, or the one of its
 * list that is chosen. @returns false where nothing is
 */
export function focusAsked(within: HTMLElement): boolean {
	const group = [...within.querySelectorAll<HTMLElement>('[data-asked]')].find(
		(asked) => seen(asked) && !asked.contains(document.activeElement),
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
		const field = within.querySelector<HTMLElement>(`[data-path="${path}"]`)
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
