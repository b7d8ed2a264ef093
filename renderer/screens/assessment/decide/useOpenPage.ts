/** The page beside the questions stands open where there is room for it; it may still be closed. */
import { type RefObject, useEffect } from 'react'

export function useOpenPage(box: RefObject<HTMLElement | null>, wide: boolean): void {
	useEffect(() => {
		const page = box.current?.querySelector<HTMLDetailsElement>('details[data-preview]')
		if (wide && page) page.open = true
	}, [box, wide])
}
