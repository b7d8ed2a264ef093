/** Whether there is room beside something, in letters: large text needs a wider window. */
import { useCallback, useState } from 'react'

const rootLetters = (): number =>
	Number.parseFloat(getComputedStyle(document.documentElement).fontSize) || 16
/**
 * @param rem the least width of what holds the element
 * @returns a ref for the element, and whether what holds it is as wide
 */
export function useRoomFor(rem: number): [(element: HTMLElement | null) => void, boolean] {
	const [isWide, setWide] = useState(false)
	const ref = useCallback(
		(element: HTMLElement | null) => {
			const holder = element?.parentElement
			if (!holder) return
			const measure = () => setWide(holder.clientWidth >= rem * rootLetters())
			measure()
			const observer = new ResizeObserver(measure)
			observer.observe(holder)
			return () => observer.disconnect()
		},
		[rem],
	)
	return [ref, isWide]
}
