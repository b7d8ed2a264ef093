/** One player: details, earlier visits with their reports, and the way into an assessment. */

import { Box, Button, Stack, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords, today } from '../../parts/dates.ts'
import { goTo } from '../../parts/goTo.ts'
import type { PersonRole } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { DetailsForm } from './DetailsForm.tsx'
import type { Player } from './details.ts'
import type { SavedNotice } from './notice.ts'
import { SavedWords } from './SavedWords.tsx'
import { usePlayerForm } from './usePlayerForm.ts'
import { Visits } from './Visits.tsx'

interface PlayerProps {
	/** who works here: reception keeps the details, others assess too */
	role: PersonRole
	notice: SavedNotice | undefined
	saved: (notice: SavedNotice) => void
}
interface Known {
	playerId: string
	opened: OutputOf<'players.open'>
}
const underTitle = ({ birthDate, club }: Player): string =>
	[`Born ${dayInWords(birthDate)}`, `${ageYears(birthDate, today())} years`, club]
		.filter(Boolean)
		.join(', ')

function wayOn([draft]: Known['opened']['drafts']): string {
	if (!draft) return 'Start assessment'
	return draft.amends ? 'Resume amendment' : 'Resume assessment'
}
function WaysOn({
	known: { playerId, opened },
	busy,
	assess,
}: {
	known: Known
	busy: boolean
	assess: () => void
}) {
	return (
		<Box sx={{ display: 'flex', gap: 1 }}>
			<Button variant="outlined" size="large" onClick={() => goTo(`/trends/${playerId}`)}>
				Trends
			</Button>
			<Button variant="outlined" size="large" onClick={() => goTo(`/season/${playerId}`)}>
				Season
			</Button>
			<Button variant="contained" size="large" disabled={busy} onClick={assess}>
				{wayOn(opened.drafts)}
			</Button>
		</Box>
	)
}
/** @param known undefined for a new player */
function PlayerPage({ known, role, notice, saved }: PlayerProps & { known: Known | undefined }) {
	const player = known?.opened.player
	const typed = usePlayerForm(known?.playerId, player, saved)
	const assess = async () => {
		if (typed.edited && !(await typed.save())) return
		goTo(`/assessment/${known?.playerId}`)
	}
	return (
		<Stack spacing={3}>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'center',
					justifyContent: 'space-between',
					gap: 2,
				}}
			>
				<Box>
					<Typography variant="h1">{player ? fullName(player) : 'New player'}</Typography>
					{player && (
						<Typography color="textSecondary" sx={{ mt: 0.5 }}>
							{underTitle(player)}
						</Typography>
					)}
				</Box>
				{known && role !== 'reception' && (
					<WaysOn known={known} busy={typed.busy} assess={() => void assess()} />
				)}
			</Box>
			{notice && <SavedWords notice={notice} edited={typed.edited} />}
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: {
						xs: 'minmax(0, 1fr)',
						lg: known ? 'minmax(0, 2fr) minmax(0, 1fr)' : 'minmax(0, 900px)',
					},
					gap: 3,
					alignItems: 'start',
				}}
			>
				<DetailsForm typed={typed} isNew={!known} />
				{known && (
					<Visits
						playerId={known.playerId}
						role={role}
						visits={known.opened.visits}
						drafts={known.opened.drafts}
					/>
				)}
			</Box>
		</Stack>
	)
}
function KnownPlayer({ playerId, ...rest }: PlayerProps & { playerId: string }) {
	const answer = useHost('players.open', { playerId })
	return (
		<Answered of={answer} what="the player">
			{(opened) => <PlayerPage known={{ playerId, opened }} {...rest} />}
		</Answered>
	)
}
/** @param playerId undefined for a new player */
export const PlayerScreen = ({
	playerId,
	...rest
}: PlayerProps & { playerId: string | undefined }) =>
	playerId ? (
		<KnownPlayer playerId={playerId} {...rest} />
	) : (
		<PlayerPage known={undefined} {...rest} />
	)
