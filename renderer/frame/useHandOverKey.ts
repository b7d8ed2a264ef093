/** F2 opens the hand-over from every page, also out of a field. */
import { useCallback, useEffect, useMemo, useState } from 'react'
import { type Command, useCommands } from '../parts/commands.ts'

export const handOverKey = 'F2'

/** @returns whether the hand-over is open, and how to open and close it */
export function useHandOver(open: boolean): {
	shown: boolean
	show: () => void
	close: () => void
} {
	const [shown, setShown] = useState(false)
	useEffect(() => {
		if (!open) return
		const pressed = (event: KeyboardEvent) => {
			if (event.key !== handOverKey || event.ctrlKey || event.altKey || event.metaKey) return
			event.preventDefault()
			setShown(true)
		}
		addEventListener('keydown', pressed)
		return () => removeEventListener('keydown', pressed)
	}, [open])
	useEffect(() => {
		if (!open) setShown(false)
	}, [open])
	const show = useCallback(() => setShown(true), [])
	const commands = useMemo<Command[]>(
		() => (open ? [{ name: 'Hand over to another person', keys: handOverKey, run: show }] : []),
		[open, show],
	)
	useCommands(commands)
	return { shown, show, close: () => setShown(false) }
}
