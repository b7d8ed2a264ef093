/** How large a part is on the screen, and a letter in it: for what is drawn to fit. */
import { type RefObject, useLayoutEffect, useState } from 'react'

export interface Room {
	/** px, all of them. */
	width: number
	height: number
	letter: number
}
/** @returns undefined until it stands */
export function useRoom(part: RefObject<HTMLElement | null>): Room | undefined {
	const [room, setRoom] = useState<Room>()
	useLayoutEffect(() => {
		const element = part.current
		if (!element) return
		const look = () => {
			const { width, height } = element.getBoundingClientRect()
			const letter = Number.parseFloat(getComputedStyle(element).fontSize)
			setRoom((now) =>
				now?.width === width && now.height === height && now.letter === letter
					? now
					: { width, height, letter },
			)
		}
		look()
		const observer = new ResizeObserver(look)
		observer.observe(element)
		return () => observer.disconnect()
	}, [part])
	return room
}
