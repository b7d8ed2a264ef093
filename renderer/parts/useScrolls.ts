/** Whether a part holds more than it shows: only then is it a stop of the Tab key. */
import { type RefObject, useLayoutEffect, useState } from 'react'

export function useScrolls(part: RefObject<HTMLElement | null>): boolean {
	const [scrolls, setScrolls] = useState(false)
	useLayoutEffect(() => {
		const element = part.current
		if (!element) return
		const look = () => setScrolls(element.scrollHeight > element.clientHeight + 1)
		look()
		const sizes = new ResizeObserver(look)
		sizes.observe(element)
		for (const child of element.children) sizes.observe(child)
		const parts = new MutationObserver(() => {
			for (const child of element.children) sizes.observe(child)
			look()
		})
		parts.observe(element, { childList: true, subtree: true, characterData: true })
		return () => {
			sizes.disconnect()
			parts.disconnect()
		}
	}, [part])
	return scrolls
}
