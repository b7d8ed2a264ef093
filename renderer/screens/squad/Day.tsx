/** The page of one screening day: who comes next, the board, and what follows after signing. */
import { Alert } from '@mui/material'
import { useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { StationId } from '../../../shared/desk/squad/stations.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { Page } from '../../parts/Page.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { AfterSigning } from './AfterSigning.tsx'
import { Board } from './Board.tsx'
import { NextPlayer } from './NextPlayer.tsx'
import { NewDay } from './Roster.tsx'
import { countOf, countsInWords, isOver } from './states.ts'

/** How often the board is looked at again: other desks write to it too. */
const lookEveryMs = 3000

/** The station of this desk; the next window of the same session opens at it again. */
function useStationAtDesk() {
	const [station, setStation] = useState<StationId>(
		() => (sessionStorage.getItem('squad-station') as StationId | null) ?? 'check-in',
	)
	useEffect(() => {
		sessionStorage.setItem('squad-station', station)
	}, [station])
	return [station, setStation] as const
}

export function Day({ role, squadId }: { role: PersonRole; squadId: string }) {
	const board = useHost('squad.open', { squadId }, { againAfterMs: () => lookEveryMs })
	return (
		<Answered of={board} what="the board">
			{(day) => <DayPage role={role} day={day} />}
		</Answered>
	)
}

function DayPage({ role, day }: { role: PersonRole; day: OutputOf<'squad.open'> }) {
	const [station, setStation] = useStationAtDesk()
	const { desk, treat, lead } = may(role)
	const { squadId, rows, team } = day
	const over = isOver(rows)
	return (
		<Page
			title={`${team}, ${dayInWords(day.day)}`}
			line={
				<span role="status">{`${counted(rows.length, 'player')}: ${countsInWords(rows)}.`}</span>
			}
			back={{ to: '#/squad', words: 'Back to the days' }}
		>
			{day.doubled.map(({ number, names }) => (
				<Alert key={number} severity="error" role="alert">
					The number {number} stands for {names.join(' and ')}. Give one of them another number.
				</Alert>
			))}
			<NextPlayer day={day} treat={treat} over={over} station={station} setStation={setStation} />
			<Board board={day} station={station} treat={treat} />
			{desk && (
				<AfterSigning squadId={squadId} signed={countOf(rows, 'signed')} over={over} lead={lead} />
			)}
			{desk && <NewDay into={{ squadId, team, day: day.day }} />}
		</Page>
	)
}
