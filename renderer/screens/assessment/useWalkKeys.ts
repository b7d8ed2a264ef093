/** The keys of the walk: steps, next thing, preview, undo and redo, help of the field in focus. */
import { useEffect, useRef } from 'react'
import { undone } from '../../parts/MeasureField.tsx'
import { togglePreview } from './preview.ts'
import { numberOf, type Step } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'
import type { NextThing } from './useNextThing.ts'

export interface Walking {
	signed: boolean
	steps: readonly Step[]
	open: Pick<OpenDraft, 'undo' | 'redo'>
	/** To a step; to a later one, its first field in hand. */
	goOn: (name: string) => void
	next: NextThing
	setSaid: (words: string) => void
	/** Path of the field in focus; empty where none is. */
	focused: string
	helpOpen: boolean
	setHelpOpen: (open: boolean) => void
}
const onlyAlt = (event: KeyboardEvent): boolean => event.altKey && !event.ctrlKey && !event.shiftKey
const isKey = (event: KeyboardEvent, key: string): boolean => event.key.toLowerCase() === key
/** By what it writes or, where Alt makes it write something else, by its place on the keyboard. */
const isLetter = (event: KeyboardEvent, letter: string): boolean =>
	isKey(event, letter) || event.code === `Key${letter.toUpperCase()}`
const isDigit = (event: KeyboardEvent, digit: number): boolean =>
	event.key === String(digit) || event.code === `Digit${digit}`

/** Alt and a step's number. Each of these takes a key, or returns false where it is not its own. */
function stepKey(event: KeyboardEvent, { steps, goOn }: Walking): boolean {
	const wanted = onlyAlt(event) && steps.find(({ name }) => isDigit(event, numberOf(name)))
	if (!wanted) return false
	goOn(wanted.name)
	return true
}
function nextKey(event: KeyboardEvent, { next }: Walking): boolean {
	if (!onlyAlt(event) || !isLetter(event, 'n')) return false
	next.go()
	return true
}
const previewKey = (event: KeyboardEvent): boolean =>
	onlyAlt(event) && isLetter(event, 'p') && togglePreview()

/** Keys that press a button of the walk wherever the hand is: the button names its own key. */
const pressed = ['g', 'l', 'm', 'w', 'c', 't', 'a'] as const
function buttonKey(event: KeyboardEvent): boolean {
	const letter = onlyAlt(event) && pressed.find((one) => isLetter(event, one))
	if (!letter) return false
	const named = `button[aria-keyshortcuts="Alt+${letter.toUpperCase()}"]:not(:disabled)`
	document.querySelector<HTMLButtonElement>(named)?.click()
	return true
}
const undoWords = { moved: 'One entry taken back.', none: 'Nothing to take back.' }
const redoWords = { moved: 'Entry put back.', none: 'Nothing to put back.' }
function undoKey(event: KeyboardEvent, { open, setSaid }: Walking): boolean {
	const undoOrRedo = isKey(event, 'z') || isKey(event, 'y')
	if (!event.ctrlKey || event.altKey || !undoOrRedo) return false
	const back = isKey(event, 'z') && !event.shiftKey
	const moved = back ? open.undo() : open.redo()
	const words = back ? undoWords : redoWords
	if (moved) dispatchEvent(new Event(undone))
	setSaid(moved ? words.moved : words.none)
	return true
}
function helpKey(event: KeyboardEvent, { focused, helpOpen, setHelpOpen }: Walking): boolean {
	if (!isKey(event, 'f1') || !focused) return false
	setHelpOpen(!helpOpen)
	return true
}
const keys = [stepKey, nextKey, previewKey, buttonKey, undoKey, helpKey]

/** Listens while the walk is on screen; over a dialog, and once signed, the keys are not taken. */
export function useWalkKeys(walking: Walking): void {
	const now = useRef(walking)
	useEffect(() => {
		now.current = walking
	})
	useEffect(() => {
		const keyDown = (event: KeyboardEvent) => {
			now.current.next.stop()
			if (now.current.signed || document.querySelector('[role=dialog]')) return
			if (keys.some((take) => take(event, now.current))) event.preventDefault()
		}
		// before the page's own keys, so that F1 means the field here
		addEventListener('keydown', keyDown, true)
		return () => removeEventListener('keydown', keyDown, true)
	}, [])
}
