/** Names with what is said of each. */
import { Box } from '@mui/material'
import type { ReactNode } from 'react'

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
