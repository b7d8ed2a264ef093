import type { KeyboardEvent } from 'react'

/**
 * Enter goes on and Shift+Enter back, as Tab does; lists and buttons keep their own Enter. Long
 * texts keep theirs too, and are passed over: there it would not go on.
 * @returns true where Enter was pressed on the last field: there is nothing to go on to
 */
export function walkByEnter(event: KeyboardEvent<HTMLElement>): boolean {
	const from = event.target
	if (
		event.key !== 'Enter' ||
		!(from instanceof HTMLInputElement || from instanceof HTMLSelectElement) ||
		(from instanceof HTMLInputElement && from.type === 'checkbox')
	)
		return false
	event.preventDefault()
	const all = [
		...event.currentTarget.querySelectorAll<HTMLElement>(
			'input:not([type=hidden]):not([aria-hidden=true]), select:not([data-aside]), ' +
				'button:not([disabled])',
		),
	].filter((element) => element.offsetParent !== null && element.tabIndex >= 0)
	const next = all[all.indexOf(from) + (event.shiftKey ? -1 : 1)]
	next?.focus()
	if (next instanceof HTMLInputElement) next.select()
	return next === undefined && !event.shiftKey
}
