/** Alt+N: focus goes to the next thing this step waits for. */

const seen = (element: HTMLElement): boolean => element.offsetParent !== null
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
	const consent = within.querySelector<HTMLInputElement>('input[type=checkbox][required]')
	if (consent && !consent.checked) return focus(consent)
	return focus(
		[
			...within.querySelectorAll<HTMLButtonElement>('button.MuiButton-contained:not([disabled])'),
		].find(seen),
	)
}
