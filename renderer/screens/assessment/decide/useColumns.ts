/** How many things stand side by side: by the room there is for letters of this size. */
import { type RefObject, useLayoutEffect, useState } from 'react'

export type Columns = 'one' | 'two' | 'three'
/** In letters: text of 200 % halves the room. */
const leastRem = { two: 60, three: 84 }
const columnsIn = (widthPx: number): Columns => {
	const rem = widthPx / Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
	if (rem >= leastRem.three) return 'three'
	return rem >= leastRem.two ? 'two' : 'one'
}
export function useColumns(box: RefObject<HTMLElement | null>): Columns {
	const [columns, setColumns] = useState<Columns>('two')
	useLayoutEffect(() => {
		const measured = box.current
		if (!measured) return
		const look = () => setColumns(columnsIn(measured.clientWidth))
		look()
		const observer = new ResizeObserver(look)
		observer.observe(measured)
		// larger letters leave the width as it is
		const letters = new MutationObserver(look)
		letters.observe(document.documentElement, { attributes: true })
		return () => {
			observer.disconnect()
			letters.disconnect()
		}
	}, [box])
	return columns
}
