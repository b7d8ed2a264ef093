/** Tells the host that somebody is at the keyboard, so that the records stay open meanwhile. */
import { useEffect } from 'react'
import { call } from '../host.ts'
import { askStatusAgain } from '../query.ts'
import { isLockKey } from './useLockKey.ts'

/** How often at most the host hears of it. */
const aliveEveryMs = 20_000
const touches = ['keydown', 'pointerdown', 'pointermove', 'wheel'] as const

export function useAliveSignal(open: boolean): void {
	useEffect(() => {
		if (!open) return
		let told = 0
		const touched = (event: Event) => {
			if (isLockKey(event) || Date.now() - told < aliveEveryMs) return
			told = Date.now()
			call('session.alive', {}).catch(askStatusAgain)
		}
		for (const touch of touches) addEventListener(touch, touched, { passive: true })
		return () => {
			for (const touch of touches) removeEventListener(touch, touched)
		}
	}, [open])
}
