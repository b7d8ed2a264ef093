/** The board of a day: who is where, what is missing, and what can be done for each player. */
import { Box, Button, Chip, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { BoardRow } from '../../../shared/desk/squad/board.ts'
import type { StationId } from '../../../shared/desk/squad/stations.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel, Rows, Way } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'
import { stateColours, stateOf } from './states.ts'

type Day = OutputOf<'squad.open'>
const acts = { display: 'flex', flexWrap: 'wrap', gap: 1 } as const
const hints = {
	treat: 'Who is where and what is missing. Signing is one by one: open each player.',
	desk: 'Who is here, and who is missing. The stations are for those who assess.',
}
const nameOf = (board: Day, id: string | undefined): string =>
	board.stations.find((station) => station.id === id)?.name ?? ''

/** What a player on the way still lacks, by station; of others nothing is said. */
function missingOf(board: Day, row: BoardRow): string {
	if (row.state !== 'open') return ''
	const gaps = row.missing.map((gap) => `${nameOf(board, gap.station)} ${gap.count}`)
	return [...gaps, ...(row.consentNoted ? [] : ['consent not noted'])].join(', ')
}

/** Notes on the board who came, is absent or refused; the row that is being refused is open. */
function useMarks(board: Day) {
	const action = useHostAction()
	const [refusal, setRefusal] = useState<{ playerId: string; reason: string }>()
	const leave = () => setRefusal(undefined)
	const mark = (playerId: string, presence: BoardRow['presence'], why?: string) =>
		action.run(async () => {
			await change('squad.mark', {
				squadId: board.squadId,
				playerId,
				presence,
				...(presence === 'here' ? { at: 'check-in' as const } : {}),
				...(why ? { reason: why } : {}),
			})
			// another row may have been opened while this one was written
			setRefusal((open) => (open?.playerId === playerId ? undefined : open))
			return ''
		})
	const reason = refusal?.reason ?? ''
	const refuse = (playerId: string) =>
		reason.trim()
			? mark(playerId, 'refused', reason)
			: action.run(async () => {
					throw new Error('Write first who refused, and what.')
				})
	return {
		says: action.says,
		refusing: refusal?.playerId,
		reason,
		open: (playerId: string) => setRefusal({ playerId, reason: '' }),
		setReason: (typed: string) => setRefusal((open) => open && { ...open, reason: typed }),
		mark,
		refuse,
		leave,
	}
}
type Marks = ReturnType<typeof useMarks>

interface BoardProps {
	board: Day
	station: StationId
	/** Whether who works here assesses. */
	treat: boolean
}
export function Board({ board, station, treat }: BoardProps) {
	const marks = useMarks(board)
	return (
		<Panel title="Board" hint={treat ? hints.treat : hints.desk}>
			<Trouble says={marks.says} />
			<Rows
				label="Board"
				heads={['Number', 'Player', 'State', 'Last at', 'Missing', 'Do']}
				empty="Nobody yet. Add players under Late arrivals below."
				rows={board.rows.map((row) => ({
					key: row.playerId,
					cells: [
						<Typography key="number" sx={{ fontSize: '1.25rem', fontWeight: 700 }}>
							{row.number}
						</Typography>,
						<Box key="player">
							<Typography sx={{ fontWeight: 600 }}>{row.name}</Typography>
							<Typography variant="body2" color="textSecondary">
								born {dayInWords(row.birthDate)}
							</Typography>
						</Box>,
						<Chip key="state" size="small" color={stateColours[row.state]} label={stateOf(row)} />,
						row.presence === 'here' ? nameOf(board, row.at) : '',
						missingOf(board, row),
						<Acts key="acts" row={row} marks={marks} {...{ board, station, treat }} />,
					],
				}))}
			/>
		</Panel>
	)
}

interface ActsProps extends BoardProps {
	row: BoardRow
	marks: Marks
}
/** What can be done for a player, by how far they are. */
function Acts(props: ActsProps) {
	const { row, marks } = props
	if (row.state === 'signed')
		return (
			<Box sx={acts}>
				<Way to={`#/players/${row.playerId}`}>Open the player</Way>
			</Box>
		)
	if (row.state === 'absent' || row.state === 'refused')
		return (
			<Box sx={acts}>
				<Button onClick={() => marks.mark(row.playerId, 'expected')}>Came after all</Button>
			</Box>
		)
	return <ActsBeforeSigning {...props} />
}
function ActsBeforeSigning({ board, station, treat, row, marks }: ActsProps) {
	const { playerId, name } = row
	const expected = row.state === 'expected'
	return (
		<Box sx={acts}>
			{treat && (
				<Way to={`#/squad/${board.squadId}/${station}/${playerId}`}>{nameOf(board, station)}</Way>
			)}
			{!treat && expected && row.presence !== 'here' && (
				<Button aria-label={`${name} is here`} onClick={() => marks.mark(playerId, 'here')}>
					Here
				</Button>
			)}
			{treat && row.state === 'ready' && (
				<Way to={`#/squad/${board.squadId}/clinician/${playerId}`}>Look over and sign</Way>
			)}
			{expected && (
				<Button aria-label={`${name} is absent`} onClick={() => marks.mark(playerId, 'absent')}>
					Absent
				</Button>
			)}
			{marks.refusing === playerId ? (
				<Refusal playerId={playerId} marks={marks} />
			) : (
				<Button aria-label={`${name} refused`} onClick={() => marks.open(playerId)}>
					Refused
				</Button>
			)}
		</Box>
	)
}
function Refusal({ playerId, marks }: { playerId: string; marks: Marks }) {
	return (
		<Box sx={{ display: 'flex', gap: 1, alignItems: 'end' }}>
			<Field label="Who refused, and what" value={marks.reason} set={marks.setReason} focus />
			<Button onClick={() => marks.refuse(playerId)}>Note it</Button>
			<Button onClick={marks.leave}>Leave it</Button>
		</Box>
	)
}
