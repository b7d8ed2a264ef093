/**
 * What changed between two versions: entries and decisions first, what the engine made of them
 * folded.
 */
import { Box, Stack, Typography } from '@mui/material'
import type { Difference } from '../../../shared/desk/records/amendment.ts'
import { toldDifferences } from '../../../shared/desk/records/told.ts'
import { Rows } from '../../parts/panels.tsx'

export function Differences({
	label,
	differences,
	none,
}: {
	label: string
	differences: readonly Difference[]
	none: string
}) {
	const told = toldDifferences(differences)
	const own = told.filter((difference) => difference.part !== 'result')
	const results = told.filter((difference) => difference.part === 'result')
	const table = (rows: typeof told, name: string) => (
		<Rows
			label={name}
			heads={['Field', 'Before', 'After']}
			empty={none}
			rows={rows.map((row) => ({ key: row.key, cells: [row.title, row.before, row.after] }))}
		/>
	)
	return (
		<Stack spacing={1}>
			{table(own, label)}
			{results.length > 0 && (
				<Box component="details">
					<Box
						component="summary"
						sx={{ minHeight: 44, py: 1.25, cursor: 'pointer', fontWeight: 600 }}
					>
						What follows from them in the findings ({results.length})
					</Box>
					<Typography variant="body2" color="textSecondary" sx={{ mb: 1 }}>
						Worked out by the engine from the entries of each version.
					</Typography>
					{table(results, `${label}, results`)}
				</Box>
			)}
		</Stack>
	)
}
