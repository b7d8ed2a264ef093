/** On the Flags step y and n answer the question in focus and go on to the next. */
import type { KeyboardEvent } from 'react'

const pressed = '[aria-pressed=true]'
/** Where the hand lands in a question or a part of the step: on its answer, else on its first button. */
export function focusIn(place: Element | null | undefined): void {
	const target = place?.querySelector<HTMLElement>(pressed) ?? place?.querySelector('button')
	target?.focus({ preventScroll: true })
	target?.scrollIntoView({ block: 'nearest' })
}
const isAnswer = ({ key, altKey, ctrlKey, metaKey }: KeyboardEvent): boolean =>
	(key === 'y' || key === 'n') && !altKey && !ctrlKey && !metaKey
/** What leads to the next step, in the foot. */
const wayOn = 'button[data-on]'
/** The field itself takes the answer; this only goes on, past the last one to the next step. */
export function goOnByAnswer(event: KeyboardEvent<HTMLElement>): void {
	if (!isAnswer(event) || !(event.target instanceof HTMLButtonElement)) return
	const asked = [...event.currentTarget.querySelectorAll<HTMLElement>('[data-asked]')]
	const here = event.target.closest<HTMLElement>('[data-asked]')
	if (here === null) return
	const next = asked[asked.indexOf(here) + 1]
	if (next) focusIn(next)
	else document.querySelector<HTMLElement>(wayOn)?.focus()
}
