/** Keeps the open draft with the host: saved as it is typed, looked at while it is on screen. */
import { useCallback, useEffect, useState, useSyncExternalStore } from 'react'
import { call, tell } from '../../host.ts'
import { useKeeping } from '../../parts/typedHere.ts'
import { DraftKeeper } from './draftKeeper.ts'
import { underHand } from './underHand.ts'

/** This window among all that have the draft open; another one after each reload. */
export const windowName = [...crypto.getRandomValues(new Uint8Array(12))]
	.map((byte) => byte.toString(16).padStart(2, '0'))
	.join('')
/** How often the others are looked at: where there are some, where there are none, out of sight. */
const lookMs = { withOthers: 2000, alone: 4000, outOfSight: 30_000 }

const newKeeper = () =>
	new DraftKeeper({
		window: windowName,
		save: (input) => call('drafts.save', input),
		look: (input) => call('drafts.look', input),
		held: underHand,
		later: (work, ms) => {
			const timer = setTimeout(work, ms)
			return () => clearTimeout(timer)
		},
	})
function untilNext(keeper: DraftKeeper): number {
	if (document.hidden) return lookMs.outOfSight
	return keeper.view.others.length > 0 ? lookMs.withOthers : lookMs.alone
}
/** Looks at the draft again and again, and at once where the page comes into sight. */
function useLooking(keeper: DraftKeeper): void {
	useEffect(() => {
		let timer: ReturnType<typeof setTimeout>
		let isOver = false
		// whoever cannot be reached now is told when something is typed
		const look = () => keeper.look().catch(() => {})
		const next = () => {
			clearTimeout(timer)
			timer = setTimeout(() => void look().finally(() => isOver || next()), untilNext(keeper))
		}
		const seen = () => {
			if (!document.hidden) void look()
			next()
		}
		document.addEventListener('visibilitychange', seen)
		next()
		return () => {
			isOver = true
			clearTimeout(timer)
			document.removeEventListener('visibilitychange', seen)
		}
	}, [keeper])
	useEffect(() => {
		// the next field has the focus only after this event
		const left = () => setTimeout(() => keeper.handLeft())
		document.addEventListener('focusout', left)
		return () => document.removeEventListener('focusout', left)
	}, [keeper])
}
/** What is typed last is saved, and the others are told that this window is gone. */
function useLeaving(keeper: DraftKeeper, saveNow: () => Promise<void>): void {
	useEffect(() => {
		const leaves = () => {
			const { openId: draftId } = keeper
			if (draftId) tell('drafts.look', { draftId, window: windowName, leaves: true })
		}
		const mayLeave = (event: BeforeUnloadEvent) => {
			if (!keeper.dirty) return
			void saveNow().catch(() => {})
			event.preventDefault()
		}
		addEventListener('beforeunload', mayLeave)
		addEventListener('pagehide', leaves)
		return () => {
			removeEventListener('beforeunload', mayLeave)
			removeEventListener('pagehide', leaves)
			void saveNow()
				.catch(() => {})
				.then(leaves)
		}
	}, [keeper, saveNow])
}
export function useSaving() {
	const [keeper] = useState(newKeeper)
	const view = useSyncExternalStore(keeper.subscribe, () => keeper.view)
	const saveNow = useCallback(() => keeper.save(), [keeper])
	const [kept] = useState(() => ({ keep: () => keeper.save(), end: () => keeper.close() }))
	useKeeping(kept)
	useLooking(keeper)
	useLeaving(keeper, saveNow)
	return { keeper, view, saveNow }
}
