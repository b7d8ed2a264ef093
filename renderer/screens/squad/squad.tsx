/** A squad screening day: roster, board, and one station at a time in large type. */
import { Alert, Typography } from '@mui/material'
import type { StationId } from '../../../shared/desk/squad/stations.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Page } from '../../parts/Page.tsx'
import { Rows, Way } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { Day } from './Day.tsx'
import { NewDay } from './Roster.tsx'
import { Station } from './Station.tsx'

interface SquadScreenProps {
	role: PersonRole
	squadId: string | undefined
	station: string | undefined
	playerId: string | undefined
}
/** The list of days, one day's board, or one station of it, as far as the address names them. */
export function SquadScreen({ role, squadId, station, playerId }: SquadScreenProps) {
	if (!squadId) return <Days role={role} />
	if (!station || !playerId) return <Day role={role} squadId={squadId} />
	if (!may(role).treat)
		return (
			<Alert severity="info">
				Stations are for those who assess. <Way to={`#/squad/${squadId}`}>Back to the board</Way>
			</Alert>
		)
	return <StationFor squadId={squadId} station={station as StationId} playerId={playerId} />
}

function Days({ role }: { role: PersonRole }) {
	const list = useHost('squad.list', {})
	const isOpening = list.value === undefined && !list.says
	return (
		<Page
			title="Squad screening days"
			line="A whole team in one day: a roster, a board, and one station at a time."
		>
			<Answered of={list} what="the screening days">
				{({ days }) => (
					<Rows
						label="Screening days"
						heads={['Day', 'Team', 'Players', 'Open']}
						figures={['Players']}
						empty={
							may(role).desk
								? 'No screening day yet. Name the team below, then choose or paste its roster.'
								: 'No screening day yet. Reception or a clinician imports a roster first.'
						}
						rows={days.map((day) => ({
							key: day.squadId,
							cells: [
								dayInWords(day.day),
								day.team,
								day.players,
								<Way key="open" to={`#/squad/${day.squadId}`}>
									Open the board
								</Way>,
							],
						}))}
					/>
				)}
			</Answered>
			{/* it never moves down under the hand when the list comes */}
			{may(role).desk && !isOpening && <NewDay />}
		</Page>
	)
}

interface StationForProps {
	squadId: string
	station: StationId
	playerId: string
}
function StationFor({ squadId, station, playerId }: StationForProps) {
	const board = useHost('squad.open', { squadId })
	return (
		<Answered of={board} what="the station">
			{({ rows }) => {
				const row = rows.find((player) => player.playerId === playerId)
				if (!row) return <Typography role="status">This player is not on the board.</Typography>
				return (
					<Station
						key={`${station} ${playerId}`}
						squadId={squadId}
						station={station}
						row={row}
						rows={rows}
					/>
				)
			}}
		</Answered>
	)
}
