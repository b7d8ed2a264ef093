/** The walk through the grid by keys: which place is chosen, opened; which session is pinned. */
import { type DragEvent, type KeyboardEvent, useMemo, useRef, useState } from 'react'
import { type Line, pinned } from './edits.ts'
import { fullDay, type Pairs } from './gridWords.ts'
import type { Edit } from './options.ts'
import { dayAt, firstAhead, lineAt, moved, type Place, weeksOf } from './weekGrid.ts'

/** What a dragged mark carries: the id of its pair; empty for the mark that takes a pin off. */
const dragged = 'application/x-lastwright-pair'
export const dragPair = (event: DragEvent, pair: string): void =>
	event.dataTransfer.setData(dragged, pair)

const pinWords = ({ session }: Line, pair: Pairs[number] | undefined): string => {
	const day = fullDay(session.date)
	return pair ? `Pinned ${pair.letter} to ${day}. Plan again.` : `Pin taken off ${day}. Plan again.`
}
const placeKey = ({ week, day, at }: Place): string => `${week}-${day}-${at}`

interface Walked extends Edit {
	lines: readonly Line[]
	pairs: Pairs
}
export function useGridWalk({ lines, pairs, season, change }: Walked) {
	const weeks = useMemo(() => weeksOf(season, lines), [season, lines])
	const [wanted, setPlace] = useState(() => firstAhead(weeks))
	const [open, setOpen] = useState(false)
	const body = useRef<HTMLTableSectionElement>(null)
	const here = dayAt(weeks, wanted)
	// what was chosen may have gone since
	const place = here
		? { ...wanted, at: Math.min(wanted.at, Math.max(0, here.lines.length - 1)) }
		: firstAhead(weeks)
	const line = lineAt(weeks, place)
	const focus = (to: Place) =>
		body.current?.querySelector<HTMLElement>(`[data-place="${placeKey(to)}"]`)?.focus()
	const pin = (of: Line | undefined, pair: Pairs[number] | undefined) => {
		if (!of || of.past || of.session.status || of.session.pinned === pair?.id) return
		change(pinned(season, of.session, pair?.id), pinWords(of, pair))
	}
	/** What a key does, or undefined where it is none of these. */
	const actOf = (key: string): (() => void) | undefined => {
		const to = moved(weeks, place, key)
		if (to) return () => focus(to)
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
	/** A mark was let go on a session. */
	const drop = (event: DragEvent, of: Line) => {
		if (!event.dataTransfer.types.includes(dragged)) return
		event.preventDefault()
		const id = event.dataTransfer.getData(dragged)
		pin(
			of,
			pairs.find((pair) => pair.id === id),
		)
	}
	const close = () => {
		setOpen(false)
		setTimeout(() => focus(place))
	}
	const isChosen = (of: Place): boolean => placeKey(of) === placeKey(place)
	const day = dayAt(weeks, place)?.date
	const walk = {
		isChosen,
		pick: setPlace,
		openHere: () => setOpen(true),
		press,
		drop,
		keyOf: placeKey,
	}
	return { weeks, line, day, open, close, pin, body, walk }
}
export type GridWalk = ReturnType<typeof useGridWalk>
