/** Which question is in hand: by its line, by a key, by coming back from another step. */
import { useCallback, useEffect, useRef, useState } from 'react'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import type { StepProps } from '../stepProps.ts'
import { nextOpen } from './answering.ts'
import { cameBack, leftAt } from './comingBack.ts'

const rowIn = (list: HTMLElement | null, id: string) =>
	list?.querySelector<HTMLElement>(`button[data-question="${CSS.escape(id)}"]`)

/** @param wanted the question that was asked for from another step; empty where none was */
export function useInHand(
	{ draft, draftId }: Pick<StepProps, 'draft' | 'draftId'>,
	wanted: string,
	questions: readonly AskedNow[],
) {
	const list = useRef<HTMLOListElement>(null)
	const first = wanted || leftAt(draftId)
	// until one is opened or closed by hand it is the first that is not settled, as the answer comes
	const [chosen, setChosen] = useState<string | undefined>(first || undefined)
	const [moved, setMoved] = useState(first)
	const openId = chosen ?? nextOpen(draft, questions, '')
	const goToQuestion = useCallback((id: string | undefined) => {
		// nothing is open any more: on to the next step, at one press
		if (id === undefined) return document.querySelector<HTMLElement>('button[data-on]')?.focus()
		setChosen(id)
		setMoved(id)
	}, [])
	useEffect(cameBack, [])
	// the row takes the focus once what stood open before it is closed
	useEffect(() => {
		if (!moved) return
		const row = rowIn(list.current, moved)
		row?.focus()
		row?.closest('li')?.scrollIntoView({ block: 'nearest' })
		setMoved('')
	}, [moved])
	return { list, openId, setChosen, goToQuestion }
}
