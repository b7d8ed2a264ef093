/** The open draft: loaded, changed, saved within a second, and taken back entry by entry. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import type { DraftContent, OutputOf } from '../../../shared/contract.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import type { DraftView, Saved } from './draftKeeper.ts'
import { History } from './history.ts'
import { useSaving, windowName } from './useSaving.ts'

export interface OpenDraft extends Pick<DraftView, 'known' | 'others' | 'ended'> {
	content: DraftContent
	earlier: readonly Visit[]
	/** earlier visits that cannot be read, in words */
	lacking: readonly string[]
	/** The signed visit that this draft amends, and why; undefined where it amends none. */
	amends: { reason: string } | undefined
	draftId: string
	playerId: string
	/** How the last save went. */
	saved: Saved
	change: (update: (now: DraftContent) => DraftContent) => void
	/** Saves at once; rejects in words where it cannot. */
	saveNow: () => Promise<void>
	/** The same, and nothing came from elsewhere that was not seen; the state that may be signed. */
	saveToSign: () => Promise<string>
	/** Nothing is saved any more: the draft is gone. */
	closed: () => void
	/** one entry back, or forward again; false where there is none */
	undo: () => boolean
	redo: () => boolean
}
type Meta = Pick<OpenDraft, 'draftId' | 'playerId' | 'earlier' | 'lacking' | 'amends'>
const metaOf = ({ draft, earlier, lacking = [], amends }: OutputOf<'drafts.open'>): Meta => ({
	draftId: draft.draftId,
	playerId: draft.playerId,
	earlier,
	lacking,
	amends,
})

/** @param recheck a new draft begins as a re-check; @returns the draft once loaded; until then `trouble` says why not */
export function useDraft(
	playerId: string,
	recheck: boolean,
): { open?: OpenDraft; trouble: string } {
	const [meta, setMeta] = useState<Meta>()
	const [trouble, setTrouble] = useState('')
	const { keeper, view, saveNow } = useSaving()
	const history = useRef(new History())
	const change = useCallback(
		(update: (now: DraftContent) => DraftContent) => {
			const { content } = keeper.view
			if (!content) return
			const next = update(content)
			history.current.note(content, next, Date.now())
			keeper.put(next)
		},
		[keeper],
	)
	const step = useCallback(
		(way: 'back' | 'forward'): boolean => {
			const { content } = keeper.view
			const next = content && keeper.openId ? history.current[way](content) : undefined
			if (next) keeper.put(next)
			return next !== undefined
		},
		[keeper],
	)
	useEffect(() => {
		call('drafts.open', { playerId, visitDate: today(), window: windowName, recheck }).then(
			(opened) => {
				keeper.begin(opened)
				setMeta(metaOf(opened))
			},
			(error) => setTrouble(wordsOf(error)),
		)
	}, [playerId, recheck, keeper])
	const acts = useMemo(
		() => ({
			change,
			saveNow,
			saveToSign: () => keeper.saveToSign(),
			closed: () => keeper.close(),
			undo: () => step('back'),
			redo: () => step('forward'),
		}),
		[change, saveNow, keeper, step],
	)
	const { content, known, saved, others, ended } = view
	if (!content || !meta) return { trouble }
	return { trouble, open: { content, ...meta, known, saved, others, ended, ...acts } }
}
