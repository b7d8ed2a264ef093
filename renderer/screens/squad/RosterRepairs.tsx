/** Rows of a roster that cannot stand: what is wrong, and the cells to be repaired in place. */
import { Box, Button, TextField, Typography } from '@mui/material'
import { useState } from 'react'
import {
	type Column,
	columns,
	columnWords,
} from '../../../shared/desk/squad/roster-columns.table.ts'
import type { Preview, RosterState } from './useRoster.ts'

/** A column's name; what is no column stands as the reader of the list calls it. */
export const columnSays = (column: string): string =>
	columns.find((one) => one === column) ? columnWords[column as Column].says : column
/** What helps where a name cannot be printed: its spelling in letters that can. */
const spelling: Partial<Record<string, Column>> = {
	givenName: 'latinGivenName',
	familyName: 'latinFamilyName',
	guardian: 'latinGuardian',
}
/** The cells that a row's problems are about, in the order of the columns. */
function cellsToRepair(problems: Preview['problems']): Column[] {
	const wanted = new Set<string | undefined>(
		problems.flatMap(({ column, code }) =>
			code === 'not-printed'
				? [column, spelling[column]]
				: code === 'name-not-parted'
					? ['givenName', 'familyName']
					: [column],
		),
	)
	return columns.filter((column) => wanted.has(column))
}
interface RepairsProps extends Pick<RosterState, 'repair' | 'leaveOut'> {
	preview: Preview
	busy: boolean
}
export function RosterRepairs({ preview, repair, leaveOut, busy }: RepairsProps) {
	return preview.bad.map(({ row, cells }) => {
		const problems = preview.problems.filter((problem) => problem.row === row)
		return (
			<Box
				key={row}
				component="section"
				aria-label={`Row ${row}`}
				sx={{ borderLeft: 4, borderColor: 'error.main', pl: 2, display: 'grid', gap: 1 }}
			>
				<Typography sx={{ fontWeight: 600 }}>
					Row {row} {cells.name ?? [cells.givenName, cells.familyName].filter(Boolean).join(' ')}
				</Typography>
				<Box role="alert">
					{problems.map(({ column, message }) => (
						<Typography key={`${column} ${message}`}>
							Row {row}, {columnSays(column)}: {message}.
						</Typography>
					))}
				</Box>
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'center' }}>
					{cellsToRepair(problems).map((column) => (
						<Cell
							key={`${column} ${cells[column] ?? ''}`}
							label={`Row ${row}, ${columnWords[column].says}`}
							value={cells[column] ?? ''}
							set={(words) => repair(row, column, words)}
						/>
					))}
					<Button disabled={busy} onClick={() => leaveOut(row)}>
						Leave out row {row}
					</Button>
				</Box>
			</Box>
		)
	})
}
interface CellProps {
	label: string
	value: string
	set: (words: string) => void
}
/** Read again once the person goes on: with Enter, or to another field. */
function Cell({ label, value, set }: CellProps) {
	const [typed, setTyped] = useState(value)
	const done = () => {
		if (typed.trim() !== value) set(typed.trim())
	}
	return (
		<TextField
			size="small"
			label={label}
			value={typed}
			onChange={({ target }) => setTyped(target.value)}
			onBlur={done}
			onKeyDown={(event) => {
				if (event.key !== 'Enter') return
				event.preventDefault()
				done()
			}}
			slotProps={{ inputLabel: { shrink: true }, htmlInput: { spellCheck: false } }}
		/>
	)
}
