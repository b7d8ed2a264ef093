/** The walk through the list of sessions by keys: which is chosen, opened, pinned. */
import { type KeyboardEvent, useRef, useState } from 'react'
import { weekdayName } from '../../../shared/engine/plain/days.ts'
import { dayInWords } from '../../parts/dates.ts'
import { type Line, pinned } from './edits.ts'
import type { Edit } from './options.ts'
import type { Pairs } from './SessionRow.tsx'

/** Sessions that Page Up and Page Down pass over. */
const aPage = 10
const pinWords = ({ session }: Line, pair: Pairs[number] | undefined): string => {
	const day = `${weekdayName(session.date)} ${dayInWords(session.date)}`
	return pair ? `Pinned ${pair.letter} to ${day}. Plan again.` : `Pin taken off ${day}. Plan again.`
}

interface Walked extends Edit {
	lines: readonly Line[]
	pairs: Pairs
}
export function useSessionWalk({ lines, pairs, season, change }: Walked) {
	const [at, setAt] = useState(() =>
		Math.max(
			0,
			lines.findIndex((line) => !line.past),
		),
	)
	const [open, setOpen] = useState(false)
	const body = useRef<HTMLTableSectionElement>(null)
	const last = lines.length - 1
	const selected = Math.min(at, last)
	const focus = (index: number) =>
		body.current?.querySelector<HTMLElement>(`[data-row="${index}"]`)?.focus()
	const go = (index: number) => {
		const next = Math.max(0, Math.min(last, index))
		setAt(next)
		focus(next)
	}
	const pin = (line: Line, pair: Pairs[number] | undefined) => {
		if (line.past || line.session.status) return
		change(pinned(season, line.session, pair?.id), pinWords(line, pair))
	}
	const moves: Record<string, number> = {
		ArrowDown: selected + 1,
		ArrowUp: selected - 1,
		PageDown: selected + aPage,
		PageUp: selected - aPage,
		Home: 0,
		End: last,
	}
	/** What a key does, or undefined where it is none of these. */
	const actOf = (key: string): (() => void) | undefined => {
		const to = moves[key]
		if (to !== undefined) return () => go(to)
		if (key === 'Enter') return () => setOpen(true)
		const line = lines[selected]
		if (!line) return undefined
		if (key === 'Delete' || key === 'Backspace') return () => pin(line, undefined)
		const pair = pairs.find(({ letter }) => letter === key.toUpperCase())
		return pair && (() => pin(line, pair))
	}
	const press = (event: KeyboardEvent) => {
		if (event.ctrlKey || event.metaKey || event.altKey) return
		const act = actOf(event.key)
		if (!act) return
		act()
		event.preventDefault()
	}
	const close = () => {
		setOpen(false)
		setTimeout(() => focus(selected))
	}
	return { selected, pick: setAt, open, close, press, body }
}
