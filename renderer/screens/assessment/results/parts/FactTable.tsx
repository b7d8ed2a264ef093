/** Readings in rows, numbers under each other. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'

interface FactRow {
	key: string
	name: string
	cells: readonly { key: string; says: ReactNode }[]
	/** What it is held against. */
	limit: string
}
interface FactTableProps {
	label: string
	/** Over the name, each cell and the limit. */
	head: readonly string[]
	rows: readonly FactRow[]
}
const table = {
	borderCollapse: 'collapse',
	width: '100%',
	fontVariantNumeric: 'tabular-nums',
	'& th, & td': { py: 0.4, px: 1, borderTop: 1, borderColor: 'divider', textAlign: 'left' },
	'& thead th': { borderTop: 0 },
	'& :is(th, td):first-of-type': { pl: 0 },
	'& tbody th': { fontWeight: 400 },
	'& .cell': { textAlign: 'right' },
} as const
const Small = ({ children }: { children: ReactNode }) => (
	<Typography variant="body2" component="span" color="text.secondary">
		{children}
	</Typography>
)
export function FactTable({ label, head, rows }: FactTableProps) {
	return (
		<Box component="table" aria-label={label} sx={table}>
			<thead>
				<tr>
					{head.map((name, index) => (
						<th
							key={name}
							scope="col"
							className={index > 0 && index < head.length - 1 ? 'cell' : undefined}
						>
							<Small>{name}</Small>
						</th>
					))}
				</tr>
			</thead>
			<tbody>
				{rows.map(({ key, name, cells, limit }) => (
					<tr key={key}>
						<th scope="row">{name}</th>
						{cells.map((cell) => (
							<td key={cell.key} className="cell">
								{cell.says}
							</td>
						))}
						<td>
							<Small>{limit}</Small>
						</td>
					</tr>
				))}
			</tbody>
		</Box>
	)
}
