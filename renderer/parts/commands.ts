/** Commands a screen offers to the palette while it is shown. */
import { useEffect } from 'react'

export interface Command {
	name: string
	keys?: string
	run: () => void
	/** a digit that runs it where single keys are on */
	single?: string
}
const offered = new Map<object, readonly Command[]>()
export const commandsNow = (): Command[] => [...offered.values()].flat()
export function useCommands(commands: readonly Command[]): void {
	useEffect(() => {
		const mine = {}
		offered.set(mine, commands)
		return () => {
			offered.delete(mine)
		}
	}, [commands])
}
