/** Ctrl+Shift+L locks from every page. */
import { useEffect } from 'react'

export const isLockKey = (event: Event): boolean =>
	event instanceof KeyboardEvent &&
	event.ctrlKey &&
	event.shiftKey &&
	event.key.toLowerCase() === 'l'

export function useLockKey(open: boolean, lock: () => void): void {
	useEffect(() => {
		if (!open) return
		const pressed = (event: KeyboardEvent) => {
			if (!isLockKey(event)) return
			event.preventDefault()
			lock()
		}
		addEventListener('keydown', pressed)
		return () => removeEventListener('keydown', pressed)
	}, [open, lock])
}
