/** A titled part of a page, a plain table, a way to another page. */
import {
	Box,
	Link,
	Table,
	TableBody,
	TableCell,
	TableHead,
	TableRow,
	Typography,
} from '@mui/material'
import type { ReactElement, ReactNode } from 'react'
import { Empty } from './Page.tsx'
import { flush, scrollsX } from './scrollsX.ts'

/** Set off by a line, a title and space; a part within a part stands without the line. */
const setOff = { borderTop: 1, borderColor: 'divider', pt: 1.5, minWidth: 0 } as const

export function Panel({
	title,
	hint,
	beside,
	named = false,
	children,
}: {
	title: string
	hint?: string | undefined
	/** stands at the end of the title's line */
	beside?: ReactNode
	/** a screen reader finds it among the regions of the page */
	named?: boolean
	children: ReactNode
}) {
	return (
		<Box
			component="section"
			aria-label={named ? title : undefined}
			sx={{ ...setOff, display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: 1.5 }}
		>
			{(title || hint || beside) && (
				<Box>
					<Box
						sx={{
							display: 'flex',
							flexWrap: 'wrap',
							alignItems: 'baseline',
							justifyContent: 'space-between',
							columnGap: 2,
						}}
					>
						{title && <Typography variant="h2">{title}</Typography>}
						{beside}
					</Box>
					{hint && (
						<Typography color="textSecondary" sx={{ mt: 0.25, maxWidth: '52rem' }}>
							{hint}
						</Typography>
					)}
				</Box>
			)}
			{children}
		</Box>
	)
}
/** Heads of the columns of buttons and of ticks; they are left out on paper. */
export const acts = 'Actions'
export const ticks = 'Chosen'
const notPrinted = (head: string | undefined) =>
	head === acts || head === ticks ? { displayPrint: 'none' } : {}
export function Rows({
	label,
	heads,
	rows,
	empty,
	figures = [],
}: {
	label: string
	heads: readonly string[]
	rows: readonly { key: string; cells: readonly ReactNode[] }[]
	/** what will stand here and how, where there is nothing yet */
	empty: string | ReactElement
	/** the heads under which figures stand */
	figures?: readonly string[]
}) {
	if (rows.length === 0) return typeof empty === 'string' ? <Empty says={empty} /> : empty
	const side = (head: string | undefined) =>
		head !== undefined && figures.includes(head) ? 'right' : 'left'
	return (
		<Box sx={scrollsX} tabIndex={0} role="region" aria-label={label}>
			<Table size="small" aria-label={label} sx={flush}>
				<TableHead>
					<TableRow>
						{heads.map((head) => (
							<TableCell key={head} align={side(head)} sx={notPrinted(head)}>
								{head}
							</TableCell>
						))}
					</TableRow>
				</TableHead>
				<TableBody>
					{rows.map(({ key, cells }) => (
						<TableRow key={key}>
							{cells.map((cell, index) => (
								<TableCell
									key={heads[index]}
									align={side(heads[index])}
									sx={notPrinted(heads[index])}
								>
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
			sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, pr: 1.5, fontWeight: 600 }}
		>
			{children}
		</Link>
	)
}
