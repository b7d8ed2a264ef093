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
	// a decision without a choice
	const open = [
		...within.querySelectorAll<HTMLElement>('[role=group][aria-label^="Decision:"]'),
	].find((group) => seen(group) && !group.querySelector('[aria-pressed=true]'))
	if (open) return focus(open.querySelector('button'))
	// the parts of Decide stand behind tabs: the next one
	const tabs = [...within.querySelectorAll<HTMLElement>('[role=tab]')]
	const next = tabs[tabs.findIndex((tab) => tab.getAttribute('aria-selected') === 'true') + 1]
	if (next) {
		next.click()
		return focus(next)
	}
	const consent = within.querySelector<HTMLInputElement>('input[type=checkbox][required]')
	if (consent && !consent.checked) return focus(consent)
	return focus(
		[
			...within.querySelectorAll<HTMLButtonElement>('button.MuiButton-contained:not([disabled])'),
		].find(seen),
	)
}
