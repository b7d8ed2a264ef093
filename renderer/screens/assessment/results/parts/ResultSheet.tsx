/** What every result is set in. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'

/** @param label what the result is of, for those who do not see where it stands */
export function ResultSheet({ label, children }: { label: string; children: ReactNode }) {
	return (
		<Box
			component="section"
			aria-label={label}
			sx={{ display: 'grid', alignContent: 'start', gap: 1.25 }}
		>
			{children}
		</Box>
	)
}
/** What will stand here, and how it comes. */
export const Waiting = ({ children }: { children: ReactNode }) => (
	<Typography color="text.secondary">{children}</Typography>
)
export const Quiet = ({ children }: { children: ReactNode }) => (
	<Typography variant="body2" color="text.secondary" sx={{ fontVariantNumeric: 'tabular-nums' }}>
		{children}
	</Typography>
)
interface FigureProps {
	/** 'Left', 'Right', 'Stage'. */
	name: string
	/** The answer, large. */
	says: string
	/** What stands under it, a line each; empty ones are left out. */
	lines: readonly string[]
	/** Where it stops or holds. */
	stop?: boolean
}
/** An answer in large letters, with its reasons under it. */
export function Figure({ name, says, lines, stop = false }: FigureProps) {
	return (
		<Box sx={{ minWidth: 0 }}>
			<Typography variant="body2" color="text.secondary" component="h2">
				{name}
			</Typography>
			<Typography
				sx={{
					fontSize: '1.5rem',
					fontWeight: 700,
					lineHeight: 1.2,
					fontVariantNumeric: 'tabular-nums',
					...(stop ? { color: 'error.main' } : {}),
				}}
			>
				{says}
			</Typography>
			{lines.filter(Boolean).map((line) => (
				<Typography
					key={line}
					variant="body2"
					sx={{ fontVariantNumeric: 'tabular-nums', overflowWrap: 'anywhere' }}
				>
					{line}
				</Typography>
			))}
		</Box>
	)
}
/** Left on the left. */
export const TwoSides = ({ children }: { children: ReactNode }) => (
	<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', columnGap: 3 }}>
		{children}
	</Box>
)
/** Drawings side by side where there is room. */
export const Drawings = ({ children }: { children: ReactNode }) => (
	<Box
		sx={{
			display: 'grid',
			gridTemplateColumns: 'repeat(auto-fit, minmax(min(19rem, 100%), 1fr))',
			columnGap: 3,
			rowGap: 1.25,
		}}
	>
		{children}
	</Box>
)
