/** Going from step to step: the draft remembers it, and the focus goes where the hand goes on. */
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react'
import { type Step, stepAfter } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'

/** Whoever is quicker than the next drawing keeps the focus where it went. */
function focusOnceDrawn(target: () => HTMLElement | null | undefined): void {
	const before = document.activeElement
	requestAnimationFrame(() => {
		const now = document.activeElement
		if (now === before || now === document.body) target()?.focus()
	})
}
type Field = HTMLInputElement | HTMLSelectElement
/** The first field; where it holds something already, the first that is missing. */
function firstField(
	within: HTMLElement | null,
	missing: readonly string[],
): HTMLElement | undefined {
	const fields = [...(within?.querySelectorAll<Field>(':is(input, select)[data-path]') ?? [])]
	const [first] = fields
	if (first?.value === '') return first
	return fields.find(({ dataset }) => missing.includes(dataset.path ?? '')) ?? first
}
/** Where the hand begins on a step: a question to be asked or settled, else a field. */
const begin = (
	within: HTMLElement | null,
	step: Step,
	missing: readonly string[],
): HTMLElement | undefined =>
	step.groups.length > 0
		? firstField(within, missing)
		: (within?.querySelector<HTMLElement>(firstAsked[step.name] ?? 'none') ?? undefined)
/** On Flags the first answer, never the button that answers all; on Decide the line that is open. */
const firstAsked: Readonly<Partial<Record<Step['name'], string>>> = {
	'Since then': ':is(input, select)[data-path]',
	Flags: '[data-asked] [aria-pressed=true]',
	Decide: '[data-question][aria-expanded=true]',
}

interface StepsProps {
	open: Pick<OpenDraft, 'change' | 'saveNow' | 'content'>
	steps: readonly Step[]
	/** The step on screen. */
	step: Step
	stepBox: RefObject<HTMLElement | null>
	heading: RefObject<HTMLElement | null>
	/** What was said of the step before goes. */
	clear: () => void
	/** Paths that the visit still lacks. */
	missing: readonly string[]
}
/**
 * A step that is chosen is begun at its heading, as a page is. One that the hand goes on to (Enter,
 * the way on, the key of a later step), and the step that a visit opens with, is begun where it is
 * first answered: a screen reader hears the name of the step with it, since the step is a group.
 * Sign is read before it is answered, from its heading on.
 */
export function useSteps(props: StepsProps) {
	const { open, steps, step, stepBox, heading, clear, missing } = props
	const { change, saveNow, content } = open
	const { since } = content.visit
	const [wanted, setWanted] = useState({ question: '', asked: 0 })
	// the visit opens with the hand where it goes on; whoever was quicker keeps the focus
	const opened = useRef({ step, missing })
	useEffect(() => {
		const now = document.activeElement
		if (now === null || now === document.body)
			begin(stepBox.current, opened.current.step, opened.current.missing)?.focus()
	}, [stepBox])
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
			const next =
				name === undefined ? stepAfter(step, steps, since) : steps.find((one) => one.name === name)
			if (!next) return
			if (steps.indexOf(next) <= steps.indexOf(step)) return goTo(next.name)
			put(next.name)
			setWanted(({ asked }) => ({ question: '', asked }))
			focusOnceDrawn(() => begin(stepBox.current, next, missing) ?? heading.current)
		},
		[put, goTo, steps, step, since, stepBox, heading, missing],
	)
	return { goTo, goOn, wanted: wanted.question, asked: wanted.asked }
}
