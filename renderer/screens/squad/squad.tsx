/** A squad screening day: roster, board, and one station at a time in large type. */
import { Alert, Box, Button, Chip, Stack, Typography } from '@mui/material'
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { StationId } from '../../../shared/desk/squad/stations.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { saveBytes } from '../../parts/files.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel, Rows, useAction, useAnswer, Way } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { NewDay } from './Roster.tsx'
import { Station } from './Station.tsx'

type Board = OutputOf<'squad.open'>
const lookEveryMs = 3000
const progressEveryMs = 300

export function SquadScreen({
	role,
	squadId,
	station,
	playerId,
}: {
	role: PersonRole
	squadId: string | undefined
	station: string | undefined
	playerId: string | undefined
}) {
	if (squadId && station && playerId && !may(role).treat)
		return (
			<Alert severity="info">
				Stations are for those who assess. <Way to={`#/squad/${squadId}`}>Back to the board</Way>
			</Alert>
		)
	if (squadId && station && playerId)
		return <StationFor squadId={squadId} station={station as StationId} playerId={playerId} />
	if (squadId) return <Day role={role} squadId={squadId} />
	return <Days role={role} />
}
function Days({ role }: { role: PersonRole }) {
	const { value, says } = useAnswer('squad.list', {})
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Squad screening days</Typography>
			<Trouble says={says} />
			<Rows
				label="Screening days"
				heads={['Day', 'Team', 'Players', 'Open']}
				empty={
					may(role).desk
						? 'No screening day yet. Name the team below, then choose or paste its roster.'
						: 'No screening day yet. Reception or a clinician takes in a roster first.'
				}
				rows={(value?.days ?? []).map((day) => ({
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
			{may(role).desk && <NewDay />}
		</Stack>
	)
}
function StationFor({
	squadId,
	station,
	playerId,
}: {
	squadId: string
	station: StationId
	playerId: string
}) {
	const { value, says } = useAnswer('squad.open', { squadId })
	const row = value?.rows.find((one) => one.playerId === playerId)
	if (!value || !row)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">
				{value ? 'This player is not on the board.' : 'Opening the station.'}
			</Typography>
		)
	return (
		<Station
			key={`${station} ${playerId}`}
			squadId={squadId}
			station={station}
			row={row}
			rows={value.rows}
		/>
	)
}
const stateWords: Record<string, string> = {
	expected: 'expected',
	open: 'on the way',
	ready: 'ready to sign',
	signed: 'signed',
	absent: 'absent',
	refused: 'refused',
}
function Day({ role, squadId }: { role: PersonRole; squadId: string }) {
	const { value, says, again } = useAnswer('squad.open', { squadId })
	const [station, setStation] = useState<StationId>(
		() => (sessionStorage.getItem('squad-station') as StationId | null) ?? 'check-in',
	)
	const [number, setNumber] = useState('')
	const [wrong, setWrong] = useState('')
	const [arrived, setArrived] = useState('')
	const entry = useRef<HTMLDivElement>(null)
	useEffect(() => {
		const timer = setInterval(again, lookEveryMs)
		return () => clearInterval(timer)
	}, [again])
	useEffect(() => {
		sessionStorage.setItem('squad-station', station)
	}, [station])
	if (!value)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the board.</Typography>
		)
	const { desk, treat, lead } = may(role)
	const go = () => {
		setArrived('')
		if (!number.trim()) return setWrong('Type the number of the player first.')
		const found = value.rows.filter((row) => row.number === number.trim())
		if (found.length !== 1)
			return setWrong(
				found.length === 0
					? `No player has the number ${number}. Look at the board.`
					: `${found.map((row) => row.name).join(' and ')} both have the number ${number}. Open ` +
							'the right one from the board.',
			)
		const [player] = found
		if (!player) return
		if (treat) {
			location.hash = `#/squad/${squadId}/${station}/${player.playerId}`
			return
		}
		call('squad.mark', {
			squadId,
			playerId: player.playerId,
			presence: 'here',
			at: 'check-in',
		}).then(
			() => {
				setNumber('')
				setArrived(`${player.name}, number ${player.number}, is here.`)
				again()
			},
			(error) => setWrong(wordsOf(error)),
		)
	}
	const over =
		value.rows.length > 0 &&
		value.rows.every((row) => ['signed', 'absent', 'refused'].includes(row.state))
	const arrivals = value.rows.filter(
		(row) => row.state === 'expected' && row.presence === 'here',
	).length
	const count = (state: string) => value.rows.filter((row) => row.state === state).length
	return (
		<Stack spacing={3}>
			<Box>
				<Typography variant="h1">
					{value.team}, {dayInWords(value.day)}
				</Typography>
				<Typography role="status" color="textSecondary">
					{counted(value.rows.length, 'player')}:{' '}
					{Object.keys(stateWords)
						.map(
							(state) =>
								`${count(state)} ` +
								`${stateWords[state]}${state === 'expected' && arrivals > 0 ? ` (${arrivals} of them here)` : ''}`,
						)
						.join(', ')}
					.
				</Typography>
			</Box>
			<Trouble says={says} />
			{value.doubled.map((one) => (
				<Alert key={one.number} severity="error" role="alert">
					The number {one.number} stands for {one.names.join(' and ')}. Give one of them another
					number.
				</Alert>
			))}
			<Box
				component="form"
				noValidate
				ref={entry}
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					go()
				}}
				sx={{ display: 'grid', gap: 2 }}
			>
				{treat && (
					<Box
						role="group"
						aria-label="Station at this desk"
						sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}
					>
						{value.stations.map((one) => (
							<Button
								key={one.id}
								size="large"
								variant="outlined"
								aria-pressed={one.id === station}
								onClick={() => setStation(one.id)}
								sx={
									one.id === station
										? {
												fontWeight: 700,
												borderWidth: 3,
												borderColor: 'primary.main',
												bgcolor: 'action.selected',
												'&:hover': { borderWidth: 3 },
											}
										: {}
								}
							>
								{one.name}
							</Button>
						))}
					</Box>
				)}
				<Box sx={{ display: 'flex', gap: 2, alignItems: 'end', '& input': { fontSize: '2rem' } }}>
					<Box sx={{ width: 260 }}>
						<Field
							label="Number of the player"
							value={number}
							set={(next) => {
								setNumber(next)
								setWrong('')
							}}
							focus
							optional
						/>
					</Box>
					<Button type="submit" variant={over ? 'outlined' : 'contained'} size="large">
						Next player here
					</Button>
				</Box>
				<Trouble says={wrong} />
				{arrived && (
					<Alert severity="success" role="status">
						{arrived}
					</Alert>
				)}
			</Box>
			<BoardTable board={value} again={again} station={station} treat={treat} />
			{desk && <After squadId={squadId} signed={count('signed')} over={over} lead={lead} />}
			{desk && <NewDay into={{ squadId, team: value.team, day: value.day }} />}
		</Stack>
	)
}
const colours: Record<string, 'default' | 'success' | 'warning' | 'info'> = {
	ready: 'info',
	signed: 'success',
	absent: 'warning',
	refused: 'warning',
}
function BoardTable({
	board,
	again,
	station,
	treat,
}: {
	board: Board
	again: () => void
	station: StationId
	treat: boolean
}) {
	const action = useAction()
	const [refusing, setRefusing] = useState<string>()
	const [reason, setReason] = useState('')
	const mark = (
		playerId: string,
		presence: 'expected' | 'here' | 'absent' | 'refused',
		why?: string,
	) =>
		action.run(async () => {
			await call('squad.mark', {
				squadId: board.squadId,
				playerId,
				presence,
				...(presence === 'here' ? { at: 'check-in' as const } : {}),
				...(why ? { reason: why } : {}),
			})
			setRefusing(undefined)
			setReason('')
			again()
			return ''
		})
	const nameOf = (id: string | undefined) => board.stations.find((one) => one.id === id)?.name ?? ''
	return (
		<Panel
			title="Board"
			hint={
				treat
					? 'Who is where and what is missing. Signing is one by one: open each player.'
					: 'Who is here, and who is missing. The stations are for those who assess.'
			}
		>
			<Trouble says={action.says} />
			<Rows
				label="Board"
				heads={['Number', 'Player', 'State', 'Last at', 'Missing', 'Do']}
				empty="Nobody yet. Add players under Late arrivals below."
				rows={board.rows.map((row) => ({
					key: row.playerId,
					cells: [
						<Typography key="n" sx={{ fontSize: '1.25rem', fontWeight: 700 }}>
							{row.number}
						</Typography>,
						<Box key="p">
							<Typography sx={{ fontWeight: 600 }}>{row.name}</Typography>
							<Typography variant="body2" color="textSecondary">
								born {dayInWords(row.birthDate)}
							</Typography>
						</Box>,
						<Chip
							key="s"
							size="small"
							color={colours[row.state] ?? 'default'}
							label={`${row.state === 'expected' && row.presence === 'here' ? 'here' : stateWords[row.state]}${row.reason ? `: ${row.reason}` : ''}`}
						/>,
						row.presence === 'here' ? nameOf(row.at) : '',
						row.state === 'open'
							? [
									...row.missing.map((gap) => `${nameOf(gap.station)} ${gap.count}`),
									...(row.consentNoted ? [] : ['consent not noted']),
								].join(', ')
							: '',
						<Box key="a" sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
							{row.state === 'signed' ? (
								<Way to={`#/players/${row.playerId}`}>Open the player</Way>
							) : row.state === 'absent' || row.state === 'refused' ? (
								<Button onClick={() => mark(row.playerId, 'expected')}>Came after all</Button>
							) : (
								<>
									{treat && (
										<Way to={`#/squad/${board.squadId}/${station}/${row.playerId}`}>
											{nameOf(station)}
										</Way>
									)}
									{!treat && row.state === 'expected' && row.presence !== 'here' && (
										<Button
											aria-label={`${row.name} is here`}
											onClick={() => mark(row.playerId, 'here')}
										>
											Here
										</Button>
									)}
									{treat && row.state === 'ready' && (
										<Way to={`#/squad/${board.squadId}/clinician/${row.playerId}`}>
											Look over and sign
										</Way>
									)}
									{row.state === 'expected' && (
										<Button
											aria-label={`${row.name} is absent`}
											onClick={() => mark(row.playerId, 'absent')}
										>
											Absent
										</Button>
									)}
									{refusing === row.playerId ? (
										<Box sx={{ display: 'flex', gap: 1, alignItems: 'end' }}>
											<Field label="Who refused, and what" value={reason} set={setReason} focus />
											<Button
												onClick={() =>
													reason.trim()
														? mark(row.playerId, 'refused', reason)
														: action.run(async () => {
																throw new Error('Write first who refused, and what.')
															})
												}
											>
												Note it
											</Button>
											<Button
												onClick={() => {
													setRefusing(undefined)
													setReason('')
												}}
											>
												Leave it
											</Button>
										</Box>
									) : (
										<Button
											aria-label={`${row.name} refused`}
											onClick={() => setRefusing(row.playerId)}
										>
											Refused
										</Button>
									)}
								</>
							)}
						</Box>,
					],
				}))}
			/>
		</Panel>
	)
}
/** @param over nobody is left to be seen: the reports are what comes next */
function After({
	squadId,
	signed,
	over,
	lead,
}: {
	squadId: string
	signed: number
	over: boolean
	lead: boolean
}) {
	const { value, again } = useAnswer('squad.progress', { squadId })
	const [folder, setFolder] = useState('')
	const [leftOut, setLeftOut] = useState<string[]>([])
	const action = useAction()
	const running = value?.running === true
	useEffect(() => {
		if (!running) return
		const timer = setInterval(again, progressEveryMs)
		return () => clearInterval(timer)
	}, [running, again])
	const summary = (version: 'club' | 'clinician') =>
		action.run(async () => {
			const answer = await call('squad.summary', { squadId, version })
			setLeftOut(answer.leftOut)
			saveBytes(answer.pdf.base64, answer.pdf.fileName)
			return `${answer.pdf.fileName} was made.`
		})
	return (
		<Panel
			title="After signing"
			hint={
				signed === 0
					? 'Nobody is signed yet. Once the first player is signed, the reports and the summary ' +
						'for the club are made here.'
					: `${counted(signed, 'player is', 'players are')} signed. Reports are written for ` +
						`them alone; for minors the guardian's page with them.`
			}
		>
			{signed > 0 && (
				<Box
					component="form"
					noValidate
					sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'end' }}
					onSubmit={(event: React.FormEvent) => {
						event.preventDefault()
						action.run(async () => {
							await call('squad.reports', { squadId, folder: folder.trim() })
							again()
							return ''
						})
					}}
				>
					<Box sx={{ flexGrow: 1, maxWidth: 520 }}>
						<Field
							label="Folder for the reports"
							value={folder}
							set={setFolder}
							optional
							hint="A whole path. The files there are not sealed: use a safe place."
						/>
					</Box>
					<Button
						type="submit"
						variant={over ? 'contained' : 'outlined'}
						disabled={running || !folder.trim()}
					>
						Write the reports
					</Button>
					{running ? (
						<Button
							variant="outlined"
							onClick={() => {
								void call('squad.cancel', { squadId }).then(again)
							}}
						>
							Cancel
						</Button>
					) : (
						<Needs fields={[[folder.trim(), 'folder for the reports']]} />
					)}
				</Box>
			)}
			{value && value.total > 0 && (
				<Typography role="status">
					{value.said ||
						`${value.done} of ${value.total} players, ${value.files} ` +
							`files${running ? '' : '. Done.'}`}
				</Typography>
			)}
			{value?.failed.map((one) => (
				<Alert key={one} severity="error">
					{one}
				</Alert>
			))}
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{lead && (
					<Button variant="outlined" disabled={action.busy} onClick={() => summary('clinician')}>
						Summary for the clinician
					</Button>
				)}
				{lead && signed > 0 && (
					<Button variant="outlined" disabled={action.busy} onClick={() => summary('club')}>
						Summary for the club
					</Button>
				)}
			</Box>
			<Trouble says={action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			{leftOut.length > 0 && (
				<Alert severity="info">
					Left out of it: {leftOut.length} {leftOut.length === 1 ? 'player' : 'players'}.
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{leftOut.map((one) => (
							<li key={one}>{one}</li>
						))}
					</Box>
				</Alert>
			)}
		</Panel>
	)
}
