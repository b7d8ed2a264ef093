/** What a list that was read in would change, before anything changes. */
import { Alert, Box, Typography } from '@mui/material'
import type { ImportPreview as Preview } from '../../../shared/engine/season/preview.ts'
import { sessionWords } from './words.ts'

const shownAtMost = 12
/** How many sessions a list would add, change or take out. */
export const changesOf = ({ add, change, remove }: Preview): number =>
	add.length + change.length + remove.length

export function ImportPreview({ preview }: { preview: Preview }) {
	const { problems, questions, notes, same } = preview
	return (
		<>
			{problems.length > 0 && (
				<Alert severity="warning" sx={{ mb: 1 }}>
					{problems.map(({ says }) => (
						<div key={says}>{says}</div>
					))}
				</Alert>
			)}
			{questions.length > 0 && (
				<Alert severity="info" sx={{ mb: 1 }}>
					Answer the {questions.length === 1 ? 'question' : `${questions.length} questions`} above;
					until then nothing of them is taken over.
				</Alert>
			)}
			{notes.map(({ says }) => (
				<Typography key={says} variant="body2">
					{says}
				</Typography>
			))}
			<Lines title="Would be added" rows={preview.add.map(sessionWords)} />
			<Lines title="Would change" rows={preview.change.map(({ says }) => says)} />
			<Lines title="Would be taken out" rows={preview.remove.map(sessionWords)} />
			{changesOf(preview) === 0 && questions.length === 0 && (
				<Typography sx={{ mt: 1 }}>
					Nothing would change: {same} {same === 1 ? 'session is' : 'sessions are'} already here.
				</Typography>
			)}
		</>
	)
}

function Lines({ title, rows }: { title: string; rows: readonly string[] }) {
	if (rows.length === 0) return null
	return (
		<Box sx={{ mt: 1 }}>
			<Typography variant="h3">
				{title} ({rows.length})
			</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5, fontSize: '0.9rem' }}>
				{[...new Set(rows)].slice(0, shownAtMost).map((row) => (
					<li key={row}>{row}</li>
				))}
				{rows.length > shownAtMost && <li>and {rows.length - shownAtMost} more</li>}
			</Box>
		</Box>
	)
}
