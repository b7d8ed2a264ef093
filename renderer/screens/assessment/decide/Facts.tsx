/** Names with a value each, in columns. */
import { Box } from '@mui/material'
import type { ReactNode } from 'react'

export type Fact = readonly [name: string, value: ReactNode]
/** Facts without a value are left out. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
	const told = facts.filter(([, value]) => value !== undefined && value !== '' && value !== false)
	if (told.length === 0) return null
	return (
		<Box
			component="dl"
			sx={{
				m: 0,
				display: 'grid',
				gridTemplateColumns: 'minmax(8rem, max-content) minmax(0, 1fr)',
				columnGap: 2,
				rowGap: 0.5,
			}}
		>
			{told.map(([name, value]) => [
				<Box component="dt" key={name} sx={{ color: 'text.secondary' }}>
					{name}
				</Box>,
				<Box component="dd" key={`${name} value`} sx={{ m: 0 }}>
					{value}
				</Box>,
			])}
		</Box>
	)
}
