/**
 * The open draft: loaded, changed, saved within a second, in order, and never lost from the screen.
 */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { DraftContent } from '../../../shared/contract.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import { History } from './history.ts'

const waitMs = 400
export interface OpenDraft {
	content: DraftContent
	earlier: readonly Visit[]
	draftId: string
	saved: string
	change: (update: (now: DraftContent) => DraftContent) => void
	saveNow: () => Promise<void>
	closed: () => void
	/** one entry back, or forward again; false where there is none */
	undo: () => boolean
	redo: () => boolean
}

/** @returns the draft once loaded; until then `trouble` says why not */
export function useDraft(playerId: string): { open?: OpenDraft; trouble: string } {
	const [content, setContent] = useState<DraftContent>()
	const [meta, setMeta] = useState<{ draftId: string; earlier: readonly Visit[] }>()
	const [saved, setSaved] = useState('')
	const [trouble, setTrouble] = useState('')
	const latest = useRef<DraftContent>(undefined)
	const dirty = useRef(false)
	const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
	const chain = useRef<Promise<void>>(Promise.resolve())
	const id = useRef('')
	const history = useRef(new History())

	const saveNow = useCallback((): Promise<void> => {
		clearTimeout(timer.current)
		if (!dirty.current || !latest.current || !id.current) return chain.current
		dirty.current = false
		const draftId = id.current
		const sent = latest.current
		setSaved('Saving')
		// one save at a time, in order: a slow save must not overwrite a later one
		const mine = chain.current
			.catch(() => {})
			.then(async () => {
				try {
					const { savedAt } = await call('drafts.save', { draftId, content: sent })
					setSaved(`Saved ${new Date(savedAt).toLocaleTimeString('en-GB')}`)
				} catch (error) {
					dirty.current = true
					setSaved(`Not saved: ${wordsOf(error)} Your entries are still on this screen.`)
					timer.current = setTimeout(() => void saveNow().catch(() => {}), 3000)
					throw error
				}
			})
		chain.current = mine
		mine.catch(() => {})
		return mine
	}, [])
	const put = useCallback(
		(next: DraftContent): void => {
			latest.current = next
			dirty.current = true
			setContent(latest.current)
			clearTimeout(timer.current)
			timer.current = setTimeout(() => void saveNow().catch(() => {}), waitMs)
		},
		[saveNow],
	)
	const change = useCallback(
		(update: (now: DraftContent) => DraftContent) => {
			if (!latest.current) return
			const next = update(latest.current)
			history.current.note(latest.current, next, Date.now())
			put(next)
		},
		[put],
	)
	const step = useCallback(
		(way: 'back' | 'forward'): boolean => {
			const next = latest.current && id.current ? history.current[way](latest.current) : undefined
			if (next) put(next)
			return next !== undefined
		},
		[put],
	)
	const undo = useCallback(() => step('back'), [step])
	const redo = useCallback(() => step('forward'), [step])
	const closed = useCallback(() => {
		clearTimeout(timer.current)
		dirty.current = false
		id.current = ''
	}, [])
	useEffect(() => {
		call('drafts.open', { playerId, visitDate: today() }).then(
			({ draft, earlier }) => {
				id.current = draft.draftId
				latest.current = draft.content
				setMeta({ draftId: draft.draftId, earlier })
				setContent(draft.content)
				setSaved(`Saved ${new Date(draft.savedAt).toLocaleTimeString('en-GB')}`)
			},
			(error) => setTrouble(wordsOf(error)),
		)
		const leave = (event: BeforeUnloadEvent) => {
			if (dirty.current) {
				void saveNow()
				event.preventDefault()
			}
		}
		addEventListener('beforeunload', leave)
		return () => {
			removeEventListener('beforeunload', leave)
			void saveNow().catch(() => {})
		}
	}, [playerId, saveNow])
	return {
		trouble,
		...(content && meta
			? { open: { content, ...meta, saved, change, saveNow, closed, undo, redo } }
			: {}),
	}
}
