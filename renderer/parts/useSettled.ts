/** Waits until nothing was typed for a while. */
import { useEffect, useState } from 'react'

/** @returns whether `text` has stood for so long */
export function useSettled(text: string, ms: number): boolean {
	const [settled, setSettled] = useState<string>()
	useEffect(() => {
		const timer = setTimeout(() => setSettled(text), ms)
		return () => clearTimeout(timer)
	}, [text, ms])
	return settled === text
}
