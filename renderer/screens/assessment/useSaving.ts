/** Saves a draft a moment after each entry, or at once; in order, and never lost on the way. */
import { useCallback, useRef, useState } from 'react'
import type { DraftContent, OutputOf } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'

/** From an entry until it is saved, if no other comes. */
const waitMs = 400
/** From a failed save until it is tried again. */
const againMs = 3000
/** How the last save went; nothing before the first. */
export interface Saved {
	state: 'none' | 'saving' | 'saved' | 'failed'
	says: string
}
const savedAt = (moment: string): Saved => ({
	state: 'saved',
	says: `Saved ${new Date(moment).toLocaleTimeString('en-GB')}`,
})

export function useSaving() {
	const [saved, setSaved] = useState<Saved>({ state: 'none', says: '' })
	/** The draft as it stands; `dirty` while it is not on its way to the host. */
	const latest = useRef<DraftContent>(undefined)
	const dirty = useRef(false)
	/** Empty before it is opened and after it is closed: nothing is saved then. */
	const id = useRef('')
	const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
	const chain = useRef<Promise<void>>(Promise.resolve())

	const saveNow = useCallback((): Promise<void> => {
		clearTimeout(timer.current)
		if (!dirty.current || !latest.current || !id.current) return chain.current
		dirty.current = false
		const draftId = id.current
		const content = latest.current
		setSaved({ state: 'saving', says: 'Saving' })
		const save = async () => {
			try {
				const answer = await call('drafts.save', { draftId, content })
				setSaved(savedAt(answer.savedAt))
			} catch (error) {
				dirty.current = true
				const says = `Not saved: ${wordsOf(error)} Your entries are still on this screen.`
				setSaved({ state: 'failed', says })
				timer.current = setTimeout(() => void saveNow().catch(() => {}), againMs)
				throw error
			}
		}
		// one save at a time, in order: a slow save must not overwrite a later one
		const mine = chain.current.catch(() => {}).then(save)
		chain.current = mine
		mine.catch(() => {})
		return mine
	}, [])
	const begin = useCallback((draft: OutputOf<'drafts.open'>['draft']) => {
		id.current = draft.draftId
		latest.current = draft.content
		setSaved(savedAt(draft.savedAt))
	}, [])
	const put = useCallback(
		(next: DraftContent): void => {
			latest.current = next
			dirty.current = true
			clearTimeout(timer.current)
			timer.current = setTimeout(() => void saveNow().catch(() => {}), waitMs)
		},
		[saveNow],
	)
	const closed = useCallback(() => {
		clearTimeout(timer.current)
		dirty.current = false
		id.current = ''
	}, [])
	return { saved, latest, dirty, id, begin, put, saveNow, closed }
}
