import type { KeyboardEvent } from 'react'

/**
 * Enter goes on and Shift+Enter back, as Tab does; lists, buttons and long texts keep their own
 * Enter.
 */
export function walkByEnter(event: KeyboardEvent<HTMLElement>): void {
	const from = event.target
	if (
		event.key !== 'Enter' ||
		!(from instanceof HTMLInputElement || from instanceof HTMLSelectElement) ||
		(from instanceof HTMLInputElement && from.type === 'checkbox')
	)
		return
	event.preventDefault()
	const all = [
		...event.currentTarget.querySelectorAll<HTMLElement>(
			'input:not([type=hidden]):not([aria-hidden=true]), select:not([data-aside]), textarea, ' +
				'button:not([disabled], [data-aside])',
		),
	].filter((element) => element.offsetParent !== null && element.tabIndex >= 0)
	const next = all[all.indexOf(from) + (event.shiftKey ? -1 : 1)]
	next?.focus()
	if (next instanceof HTMLInputElement) next.select()
}
