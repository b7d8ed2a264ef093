/** A titled sheet, a plain table, a way to another page. */
import {
	Box,
	Link,
	Paper,
	Table,
	TableBody,
	TableCell,
	TableHead,
	TableRow,
	Typography,
} from '@mui/material'
import type { ReactNode } from 'react'

export function Panel({
	title,
	hint,
	children,
}: {
	title: string
	hint?: string | undefined
	children: ReactNode
}) {
	return (
		<Paper
			component="section"
			variant="outlined"
			sx={{ p: { xs: 2, sm: 3 }, display: 'grid', gap: 2 }}
		>
			{(title || hint) && (
				<Box>
					{title && <Typography variant="h2">{title}</Typography>}
					{hint && (
						<Typography color="textSecondary" sx={{ mt: 0.5 }}>
							{hint}
						</Typography>
					)}
				</Box>
			)}
			{children}
		</Paper>
	)
}
/** Head of the column of buttons; it is left out on paper. */
export const acts = 'Actions'
const notPrinted = (head: string | undefined) => (head === acts ? { displayPrint: 'none' } : {})
export function Rows({
	label,
	heads,
	rows,
	empty,
}: {
	label: string
	heads: readonly string[]
	rows: readonly { key: string; cells: readonly ReactNode[] }[]
	empty: string
}) {
	if (rows.length === 0) return <Typography color="textSecondary">{empty}</Typography>
	return (
		<Box sx={{ overflowX: 'auto' }} tabIndex={0} role="region" aria-label={label}>
			<Table size="small" aria-label={label}>
				<TableHead>
					<TableRow>
						{heads.map((head) => (
							<TableCell key={head} sx={{ fontWeight: 600, ...notPrinted(head) }}>
								{head}
							</TableCell>
						))}
					</TableRow>
				</TableHead>
				<TableBody>
					{rows.map(({ key, cells }) => (
						<TableRow key={key}>
							{cells.map((cell, index) => (
								<TableCell key={heads[index]} sx={notPrinted(heads[index])}>
									{cell}
								</TableCell>
							))}
						</TableRow>
					))}
				</TableBody>
			</Table>
		</Box>
	)
}
export { timeInWords as timeWords } from './dates.ts'
export function Way({ to, children }: { to: string; children: ReactNode }) {
	return (
		<Link
			href={to}
			underline="hover"
			sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, px: 1.5, fontWeight: 600 }}
		>
			{children}
		</Link>
	)
}
