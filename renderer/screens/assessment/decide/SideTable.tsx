/** Rows with a value for the left and for the right. */
import { Table, TableBody, TableCell, TableHead, TableRow } from '@mui/material'
import type { ReactNode } from 'react'

interface SideRow {
	key: string
	name: ReactNode
	left: ReactNode
	right: ReactNode
}
interface SideTableProps {
	label: string
	/** What a row is of. */
	of: string
	rows: readonly SideRow[]
}
export function SideTable({ label, of, rows }: SideTableProps) {
	return (
		<Table size="small" aria-label={label} sx={{ '& td, & th': { verticalAlign: 'top' } }}>
			<TableHead>
				<TableRow>
					<TableCell>{of}</TableCell>
					<TableCell>Left</TableCell>
					<TableCell>Right</TableCell>
				</TableRow>
			</TableHead>
			<TableBody>
				{rows.map(({ key, name, left, right }) => (
					<TableRow key={key}>
						<TableCell component="th" scope="row">
							{name}
						</TableCell>
						<TableCell>{left}</TableCell>
						<TableCell>{right}</TableCell>
					</TableRow>
				))}
			</TableBody>
		</Table>
	)
}
