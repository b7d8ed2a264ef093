/** A titled part of the player's page, and names with what is said of each. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'

export function Part({
	title,
	beside,
	children,
}: {
	title: string
	/** stands at the end of the title's line */
	beside?: ReactNode
	children: ReactNode
}) {
	return (
		<Box
			component="section"
			aria-label={title}
			sx={{ borderTop: 1, borderColor: 'divider', pt: 1.25, minWidth: 0 }}
		>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'baseline',
					justifyContent: 'space-between',
					columnGap: 2,
					mb: 0.5,
				}}
			>
				<Typography variant="h2">{title}</Typography>
				{beside}
			</Box>
			{children}
		</Box>
	)
}
/** @param strong the first is what the eye is to find */
export function Facts({
	facts,
	strong = false,
}: {
	facts: readonly (readonly [string, ReactNode])[]
	strong?: boolean
}) {
	return (
		<Box
			component="dl"
			sx={{
				m: 0,
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: 'minmax(0, 8.5rem) minmax(0, 1fr)' },
				columnGap: 2,
				rowGap: 0.5,
			}}
		>
			{facts.map(([name, says], index) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: names may stand twice, their order is fixed
				<Box key={index} sx={{ display: 'contents' }}>
					<Box component="dt" sx={{ color: 'text.secondary' }}>
						{name}
					</Box>
					<Box
						component="dd"
						sx={{
							m: 0,
							overflowWrap: 'anywhere',
							fontVariantNumeric: 'tabular-nums',
							...(strong && { fontWeight: 600 }),
						}}
					>
						{says}
					</Box>
				</Box>
			))}
		</Box>
	)
}
export const Empty = ({ children }: { children: ReactNode }) => (
	<Typography color="textSecondary">{children}</Typography>
)
