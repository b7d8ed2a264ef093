/** Whether the ring of what has the focus is whole. */
import type { Page } from '@playwright/test'

/** What cuts the ring off, in words; '' where it is whole. */
export function cutRing(page: Page): Promise<string> {
	return page.evaluate(() => {
		const now = document.activeElement
		if (!(now instanceof HTMLElement)) return ''
		const ringed = (part: HTMLElement) => getComputedStyle(part).outlineStyle !== 'none'
		const holder = [
			now,
			now.closest<HTMLElement>('.MuiInputBase-root'),
			now.closest<HTMLElement>('.MuiCheckbox-root, .MuiRadio-root, .MuiSwitch-root'),
			now.closest<HTMLElement>('label'),
		].find((part) => part !== null && ringed(part))
		if (!holder) return ''
		const { outlineWidth, outlineOffset } = getComputedStyle(holder)
		const reach = Number.parseFloat(outlineWidth) + Number.parseFloat(outlineOffset)
		const ring = holder.getBoundingClientRect()
		const cuts = (part: HTMLElement): boolean => {
			const { overflowX, overflowY } = getComputedStyle(part)
			if (overflowX === 'visible' && overflowY === 'visible') return false
			const edge = part.getBoundingClientRect()
			return [
				edge.left - ring.left,
				ring.right - edge.right,
				edge.top - ring.top,
				ring.bottom - edge.bottom,
			].some((beyondPx) => beyondPx + reach > 0.5)
		}
		for (let part = holder.parentElement; part && part !== document.body; part = part.parentElement)
			if (cuts(part)) {
				const name = now.getAttribute('aria-label') ?? now.textContent ?? ''
				const by = part.getAttribute('aria-label') ?? part.className
				return `the ring of "${name.trim().slice(0, 40)}" is cut off by "${by}"`
			}
		return ''
	})
}
