/** The weekly pattern that was entered under play, offered in one step and never taken silently. */
import { Alert, Box, Button } from '@mui/material'
import { withPatterns } from './edits.ts'
import type { Edit } from './options.ts'
import type { Opened } from './useSeasonEdits.ts'
import { patternWords } from './words.ts'

interface FromPlayProps extends Edit {
	offered: Opened['fromPlay']
}
export function FromPlay({ offered, season, change }: FromPlayProps) {
	if (!offered || (season.pattern ?? []).length > 0) return null
	const { rows, said } = offered
	const take = () =>
		change(withPatterns(season, rows), 'Taken from play: look at days, starts and surfaces.')
	return (
		<Alert
			severity="info"
			role="status"
			action={
				<Button size="small" onClick={take}>
					Take these rows
				</Button>
			}
		>
			{said.says}
			<Box component="ul" sx={{ m: 0, mt: 1, pl: 2.5 }} aria-label="Rows from play">
				{rows.map((row) => (
					<li key={row.id}>{patternWords(row)}</li>
				))}
			</Box>
		</Alert>
	)
}
