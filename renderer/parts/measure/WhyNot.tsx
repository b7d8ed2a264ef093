/** Why a measure was not taken, changed without typing it anew. */
import { Box } from '@mui/material'
import type { ChangeEvent } from 'react'
import { reasonOf, reasonsNotMeasured } from '../judge.ts'

export function WhyNot({
	name,
	reason,
	set,
}: {
	name: string
	reason: string
	set: (words: string) => void
}) {
	const known = reasonOf(reason)
	return (
		<Box
			component="label"
			sx={{
				display: 'flex',
				alignItems: 'center',
				gap: 1,
				fontSize: '0.875rem',
				color: 'text.secondary',
				mb: 1,
				whiteSpace: 'nowrap',
			}}
		>
			Why not
			<Box
				component="select"
				data-aside=""
				aria-label={`${name}: why not measured`}
				value={known ?? ''}
				onChange={(event: ChangeEvent<HTMLSelectElement>) => set(event.target.value)}
				sx={{
					font: 'inherit',
					minHeight: 44,
					minWidth: 0,
					flex: 1,
					color: 'text.primary',
					bgcolor: 'background.paper',
				}}
			>
				{known === undefined ? <option value="">{reason}</option> : null}
				{reasonsNotMeasured.map(({ keys, words }) => (
					<option key={keys} value={words}>
						{words} ({keys})
					</option>
				))}
			</Box>
		</Box>
	)
}
