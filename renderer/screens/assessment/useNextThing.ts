/** Alt+N: the focus goes to what is to be done next on the step on screen. */
import { type RefObject, useEffect, useRef } from 'react'
import { focusNext } from './nextThing.ts'

/** A button may still be waiting for the host when the key comes: how long before one more try. */
const waitMs = 400

/**
 * @param missing what the step still lacks, in the order of the walk
 * @param say puts words on the screen; empty words take them away
 */
export function useNextThing(
	stepBox: RefObject<HTMLElement | null>,
	missing: readonly { path: string }[],
	say: (words: string) => void,
) {
	const later = useRef<ReturnType<typeof setTimeout>>(undefined)
	useEffect(() => () => clearTimeout(later.current), [])
	const stop = () => clearTimeout(later.current)
	const go = (tries = 1) => {
		stop()
		if (!stepBox.current) return
		const paths = missing.map(({ path }) => path)
		if (focusNext(stepBox.current, paths)) say('')
		else if (tries > 0) later.current = setTimeout(() => go(tries - 1), waitMs)
		else say('Nothing is left to do on this step.')
	}
	return { go, stop }
}
/** `go` goes there, with one more try; `stop` gives that try up. */
export type NextThing = ReturnType<typeof useNextThing>
