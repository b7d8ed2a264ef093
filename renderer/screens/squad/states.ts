/** How far a player of the day is, in words and colour. Pure. */
import type { BoardRow } from '../../../shared/desk/squad/board.ts'

type State = BoardRow['state']

/** In the order in which they are counted above the board. */
const stateWords: Record<State, string> = {
	expected: 'expected',
	open: 'on the way',
	ready: 'ready to sign',
	signed: 'signed',
	absent: 'absent',
	refused: 'refused',
}
export const stateColours: Record<State, 'default' | 'success' | 'warning' | 'info'> = {
	expected: 'default',
	open: 'default',
	ready: 'info',
	signed: 'success',
	absent: 'warning',
	refused: 'warning',
}
/** States after which nothing is left to do for a player on the day. */
const closed: readonly State[] = ['signed', 'absent', 'refused']

/** Number of players in a state. */
export const countOf = (rows: readonly BoardRow[], state: State): number =>
	rows.filter((row) => row.state === state).length

/** Whether nobody of the day is left to be seen; a day without players is not over. */
export const isOver = (rows: readonly BoardRow[]): boolean =>
	rows.length > 0 && rows.every((row) => closed.includes(row.state))

/** Whether a player arrived and nothing was measured yet. */
const isWaiting = (row: BoardRow): boolean => row.state === 'expected' && row.presence === 'here'

/** 'here', 'signed', 'refused: the mother, photographs'. */
export const stateOf = (row: BoardRow): string =>
	`${isWaiting(row) ? 'here' : stateWords[row.state]}${row.reason ? `: ${row.reason}` : ''}`

/** '3 expected (1 of them here), 2 on the way, ...': every state, also where nobody is in it. */
export function countsInWords(rows: readonly BoardRow[]): string {
	const waiting = rows.filter(isWaiting).length
	const states = Object.keys(stateWords) as State[]
	return states
		.map((state) => {
			const here = state === 'expected' && waiting > 0 ? ` (${waiting} of them here)` : ''
			return `${countOf(rows, state)} ${stateWords[state]}${here}`
		})
		.join(', ')
}
