/** A new page begins at its heading, for the keys and for a screen reader. */
import { useEffect } from 'react'

/**
 * Puts focus on the page's h1 as soon as it stands, unless a field of the page took it or the
 * person moved on. @returns an end to the waiting
 */
function focusHeading(): () => void {
	const main = document.getElementById('main')
	const before = document.activeElement
	const settled = (late: boolean): boolean => {
		const now = document.activeElement
		if (now instanceof HTMLInputElement || (late && now !== before && now !== document.body))
			return true
		const heading = main?.querySelector('h1')
		if (!heading) return false
		heading.tabIndex = -1
		heading.focus()
		return true
	}
	if (settled(false) || !main) return () => {}
	const watch = new MutationObserver(() => {
		if (settled(true)) watch.disconnect()
	})
	watch.observe(main, { childList: true, subtree: true })
	return () => watch.disconnect()
}
/** @param gate undefined until the host answered: no page stands before */
export function useHeadingFocus(address: string, gate: string | undefined): void {
	// biome-ignore lint/correctness/useExhaustiveDependencies: each brings a new page
	useEffect(() => (gate === undefined ? undefined : focusHeading()), [address, gate])
}
