/** The first-run tour: beside the work, never over it; skipped or finished once for this PC. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { useState, useSyncExternalStore } from 'react'
import { lookNow, onLook, saveLook } from './look.ts'

const stops: readonly { title: string; says: string }[] = [
	{
		title: 'Find or add a player',
		says: 'Search by any part of a name. Enter opens the first one found; New player adds one.',
	},
	{
		title: 'Measure with one hand',
		says:
			'In an assessment Enter goes from field to field. Repeats stand with a space between, ' +
			'= copies the other side, n means not measured. The picture beside the field shows ' +
			'where the device goes; F1 tells how.',
	},
	{
		title: 'Read the reasons',
		says:
			'Findings appear beside the field. Basis shows the numbers put in, the threshold and ' +
			'its source.',
	},
	{
		title: 'Decide and sign',
		says:
			'Some ten questions, each with its reasons: A as proposed, C change, S set aside. Nothing is ' +
			'settled for you. Ctrl+Z takes entries back until you sign; a signed ' +
			'visit never changes.',
	},
	{
		title: 'Go anywhere',
		says:
			'Ctrl+K finds every step, player and page. Alt+1 to Alt+8 are the steps. Ctrl+/ shows ' +
			'all shortcuts. Help and Settings stand at the top.',
	},
]
export function Tour() {
	const look = useSyncExternalStore(onLook, lookNow)
	const [at, setAt] = useState(0)
	const stop = stops[at]
	if (look.tourSeen || !stop) return null
	const end = () => {
		saveLook({ tourSeen: true }).catch(() => {})
	}
	return (
		<Paper
			component="section"
			aria-label="First steps"
			variant="outlined"
			sx={{ p: 2, mb: 3, borderColor: 'primary.main', displayPrint: 'none' }}
		>
			<Typography variant="h2">
				{stop.title}{' '}
				<Box component="span" sx={{ fontWeight: 400, color: 'text.secondary', fontSize: '0.9rem' }}>
					{at + 1} of {stops.length}
				</Box>
			</Typography>
			<Typography sx={{ my: 1 }} role="status">
				{stop.says}
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{at < stops.length - 1 ? (
					<Button variant="outlined" onClick={() => setAt(at + 1)}>
						Next tip
					</Button>
				) : (
					<Button variant="outlined" onClick={end}>
						Done
					</Button>
				)}
				{at > 0 ? <Button onClick={() => setAt(at - 1)}>Tip before</Button> : null}
				{at < stops.length - 1 ? <Button onClick={end}>Skip the tips</Button> : null}
			</Box>
		</Paper>
	)
}
