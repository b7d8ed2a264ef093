/** What came home, file by file, and what is still to settle of it. */
import { Box, Typography } from '@mui/material'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { Changes, Counts, Found, type Listed } from './Merged.tsx'
import { Twice } from './Twice.tsx'
import { TwoDrafts } from './TwoDrafts.tsx'

export function Merges({
	merged,
	leads,
	owner,
}: {
	merged: Listed['merged']
	leads: boolean
	owner: boolean
}) {
	return (
		<Panel title="What came home">
			{merged.map((file) => (
				<Box
					key={file.packId}
					sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr)', gap: 1 }}
				>
					<Typography sx={{ fontWeight: 600 }}>
						{timeWords(file.at)}, brought in by {file.by}. Receipt for the laptop: {file.receipt}
					</Typography>
					<Counts counts={file.counts} trailRows={file.trailRows} owner={owner} />
					<Found found={file} />
					{file.changes.length > 0 && <Changes changes={file.changes} />}
					{file.duplicates.map((duplicate) => (
						<Twice
							key={`${duplicate.playerId} ${duplicate.like}`}
							duplicate={duplicate}
							leads={leads}
						/>
					))}
					{file.draftsBoth.map(({ name, drafts }) => (
						<TwoDrafts key={drafts.join()} name={name} drafts={drafts} leads={leads} />
					))}
				</Box>
			))}
		</Panel>
	)
}
