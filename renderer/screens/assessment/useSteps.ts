/** Going from step to step: the draft remembers it, and the focus goes where the hand goes on. */
import { type RefObject, useCallback, useState } from 'react'
import type { Step } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'

/** Whoever is quicker than the next drawing keeps the focus where it went. */
function focusOnceDrawn(target: () => HTMLElement | null | undefined): void {
	const before = document.activeElement
	requestAnimationFrame(() => {
		const now = document.activeElement
		if (now === before || now === document.body) target()?.focus()
	})
}
const firstField = (within: HTMLElement | null) =>
	within?.querySelector<HTMLElement>(':is(input, select)[data-path]')

interface StepsProps {
	open: Pick<OpenDraft, 'change' | 'saveNow'>
	steps: readonly Step[]
	/** The step on screen. */
	step: Step
	stepBox: RefObject<HTMLElement | null>
	heading: RefObject<HTMLElement | null>
	/** What was said of the step before goes. */
	clear: () => void
}
/**
 * A step that is chosen is begun at its heading, as a page is. One that the hand goes on to (Enter,
 * the way on, the key of a later step) is begun at its first field: a screen reader hears the name
 * of the step with it, since the step is a group.
 */
export function useSteps({ open, steps, step, stepBox, heading, clear }: StepsProps) {
	const { change, saveNow } = open
	const [wanted, setWanted] = useState({ question: '', asked: 0 })
	const put = useCallback(
		(name: string) => {
			clear()
			change((now) => ({ ...now, step: name }))
			void saveNow().catch(() => {})
			scrollTo(0, 0)
		},
		[change, saveNow, clear],
	)
	const goTo = useCallback(
		(name: string, question = '') => {
			put(name)
			setWanted(({ asked }) => ({ question, asked: asked + (question === '' ? 0 : 1) }))
			// a question that is asked for takes the focus itself
			if (question === '') focusOnceDrawn(() => heading.current)
		},
		[put, heading],
	)
	const goOn = useCallback(
		(name?: string) => {
			const to =
				name === undefined ? steps.indexOf(step) + 1 : steps.findIndex((one) => one.name === name)
			const next = steps[to]
			if (!next) return
			if (to <= steps.indexOf(step)) return goTo(next.name)
			put(next.name)
			setWanted(({ asked }) => ({ question: '', asked }))
			const fields = next.groups.length > 0
			focusOnceDrawn(() => (fields ? firstField(stepBox.current) : undefined) ?? heading.current)
		},
		[put, goTo, steps, step, stepBox, heading],
	)
	return { goTo, goOn, wanted: wanted.question, asked: wanted.asked }
}
