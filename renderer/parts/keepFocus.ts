/**
 * The focus is not lost when the control that has it is switched off for a while or goes away: it
 * comes back to it, or goes to what comes next in its place, or to the heading of a page that is
 * new.
 */

/** ms within which a screen may move the focus itself. */
const patience = 350
/** ms for which an action may keep its own button off before the focus goes on. */
const running = 1500
const reachable =
	'a[href], button:not([disabled]), input:not([disabled]):not([type=hidden]), ' +
	'select:not([disabled]), textarea:not([disabled]), summary, [tabindex="0"]'
const off = (control: HTMLElement): boolean => control.matches(':disabled')
const lost = (): boolean =>
	document.activeElement === null || document.activeElement === document.body

/** The whole page changed: its heading, from where a screen reader begins. */
function headingOf(page: HTMLElement): HTMLElement | undefined {
	const heading = page.querySelector<HTMLElement>('h1') ?? undefined
	if (heading) heading.tabIndex = -1
	return heading
}
/**
 * What comes after `from` within the nearest ancestor that still stands; else what comes before it.
 */
function nextTo(from: HTMLElement, chain: readonly HTMLElement[]): HTMLElement | undefined {
	for (const ancestor of chain.filter((element) => element.isConnected)) {
		if (ancestor.id === 'main' && !from.isConnected) return headingOf(ancestor)
		const all = [...ancestor.querySelectorAll<HTMLElement>(reachable)].filter(
			(element) => element.offsetParent !== null,
		)
		const found = from.isConnected
			? (all.find(
					(element) => from.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_FOLLOWING,
				) ?? all.at(-1))
			: all[0]
		if (found) return found
	}
	return undefined
}
/** @returns an end to the watch */
export function keepFocus(): () => void {
	let last: HTMLElement | undefined
	let chain: HTMLElement[] = []
	let waiting: ReturnType<typeof setTimeout> | undefined
	const focused = ({ target }: FocusEvent) => {
		if (!(target instanceof HTMLElement)) return
		last = target
		chain = []
		for (let up = target.parentElement; up && up !== document.body; up = up.parentElement)
			chain.push(up)
	}
	// a press beside every control lets the focus go on purpose
	const pressed = () => {
		last = undefined
	}
	const back = () => {
		if (!last || !lost()) return
		;(last.isConnected && !off(last) ? last : nextTo(last, chain))?.focus({ preventScroll: true })
	}
	// the browser lets go of a control that is off only after a while: looked at later, never at once
	const look = () => {
		clearTimeout(waiting)
		waiting = setTimeout(back, last?.isConnected && off(last) ? running : patience)
	}
	const observer = new MutationObserver((changes) => {
		if (
			last &&
			(!last.isConnected ||
				changes.some(
					(change) =>
						change.type === 'attributes' &&
						change.target instanceof HTMLElement &&
						change.target.contains(last ?? null),
				))
		)
			look()
	})
	observer.observe(document.body, {
		subtree: true,
		childList: true,
		attributes: true,
		attributeFilter: ['disabled'],
	})
	addEventListener('focusin', focused)
	addEventListener('pointerdown', pressed, true)
	return () => {
		observer.disconnect()
		clearTimeout(waiting)
		removeEventListener('focusin', focused)
		removeEventListener('pointerdown', pressed, true)
	}
}
