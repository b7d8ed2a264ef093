import type { KeyboardEvent } from 'react'

/**
 * Where Enter comes to rest: fields, and toggles that are named for it by `data-walk`. Other buttons
 * are none, so that no second Enter takes a row away. Long texts keep their own Enter.
 */
const stops =
	'input:not([type=hidden]):not([aria-hidden=true]), select:not([data-aside]), ' +
	'[data-walk] button:not([disabled])'
const groupOf = (element: Element): Element | null => element.closest('[data-walk]')
/** What can be walked to, in order; a group of toggles is one stop. */
function stopsIn(root: HTMLElement): HTMLElement[] {
	const seen = [...root.querySelectorAll<HTMLElement>(stops)].filter(
		(element) => element.offsetParent !== null && element.tabIndex >= 0,
	)
	const groups = new Set<Element>()
	return seen.filter((element) => {
		const group = element instanceof HTMLButtonElement ? groupOf(element) : null
		if (group === null) return true
		const first = !groups.has(group)
		groups.add(group)
		return first
	})
}
/** A field that goes on by Enter; of a group of toggles its one stop, whichever has the focus. */
function stopOf(target: EventTarget, all: readonly HTMLElement[]): HTMLElement | undefined {
	if (target instanceof HTMLInputElement && target.type === 'checkbox') return undefined
	if (target instanceof HTMLInputElement || target instanceof HTMLSelectElement) return target
	const group = target instanceof HTMLButtonElement ? groupOf(target) : null
	return group === null ? undefined : all.find((stop) => group.contains(stop))
}
/**
 * Enter goes on and Shift+Enter back, as Tab does; toggles are chosen by the space bar. Lists and
 * other buttons keep their own Enter.
 * @returns true where Enter was pressed on the last field: there is nothing to go on to
 */
export function walkByEnter(event: KeyboardEvent<HTMLElement>): boolean {
	if (event.key !== 'Enter') return false
	const all = stopsIn(event.currentTarget)
	const from = stopOf(event.target, all)
	if (from === undefined) return false
	event.preventDefault()
	const next = all[all.indexOf(from) + (event.shiftKey ? -1 : 1)]
	next?.focus()
	if (next instanceof HTMLInputElement) next.select()
	return next === undefined && !event.shiftKey
}
