/** The open draft: loaded, changed, saved within a second, and taken back entry by entry. */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { DraftContent } from '../../../shared/contract.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import { History } from './history.ts'
import { type Saved, useSaving } from './useSaving.ts'

export interface OpenDraft {
	content: DraftContent
	earlier: readonly Visit[]
	/** earlier visits that cannot be read, in words */
	lacking: readonly string[]
	/** The signed visit that this draft amends, and why; undefined where it amends none. */
	amends: { reason: string } | undefined
	draftId: string
	/** How the last save went. */
	saved: Saved
	change: (update: (now: DraftContent) => DraftContent) => void
	/** Saves at once; rejects in words where it cannot. */
	saveNow: () => Promise<void>
	/** Nothing is saved any more: the draft is gone. */
	closed: () => void
	/** one entry back, or forward again; false where there is none */
	undo: () => boolean
	redo: () => boolean
}

/** @returns the draft once loaded; until then `trouble` says why not */
export function useDraft(playerId: string): { open?: OpenDraft; trouble: string } {
	const [content, setContent] = useState<DraftContent>()
	const [meta, setMeta] = useState<Pick<OpenDraft, 'draftId' | 'earlier' | 'lacking' | 'amends'>>()
	const [trouble, setTrouble] = useState('')
	const { saved, latest, dirty, id, begin, put: save, saveNow, closed } = useSaving()
	const history = useRef(new History())
	const put = useCallback(
		(next: DraftContent): void => {
			setContent(next)
			save(next)
		},
		[save],
	)
	const change = useCallback(
		(update: (now: DraftContent) => DraftContent) => {
			if (!latest.current) return
			const next = update(latest.current)
			history.current.note(latest.current, next, Date.now())
			put(next)
		},
		[latest, put],
	)
	const step = useCallback(
		(way: 'back' | 'forward'): boolean => {
			const next = latest.current && id.current ? history.current[way](latest.current) : undefined
			if (next) put(next)
			return next !== undefined
		},
		[latest, id, put],
	)
	const undo = useCallback(() => step('back'), [step])
	const redo = useCallback(() => step('forward'), [step])
	useEffect(() => {
		call('drafts.open', { playerId, visitDate: today() }).then(
			({ draft, earlier, lacking = [], amends }) => {
				begin(draft)
				setMeta({ draftId: draft.draftId, earlier, lacking, amends })
				setContent(draft.content)
			},
			(error) => setTrouble(wordsOf(error)),
		)
	}, [playerId, begin])
	useEffect(() => {
		const leave = (event: BeforeUnloadEvent) => {
			if (!dirty.current) return
			void saveNow()
			event.preventDefault()
		}
		addEventListener('beforeunload', leave)
		return () => {
			removeEventListener('beforeunload', leave)
			void saveNow().catch(() => {})
		}
	}, [dirty, saveNow])
	if (!content || !meta) return { trouble }
	return { trouble, open: { content, ...meta, saved, change, saveNow, closed, undo, redo } }
}
