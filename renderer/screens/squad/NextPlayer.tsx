/**
 * The number of the player who stands here now: those who assess go to their station with it,
 * reception notes that the player has come.
 */
import { Alert, Box, Button } from '@mui/material'
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { OutputOf } from '../../../shared/contract.ts'
import type { BoardRow } from '../../../shared/desk/squad/board.ts'
import type { StationId } from '../../../shared/desk/squad/stations.ts'
import { wordsOf } from '../../host.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { change } from '../../query.ts'

type Day = OutputOf<'squad.open'>
const chosen = {
	fontWeight: 700,
	borderWidth: 3,
	borderColor: 'primary.main',
	bgcolor: 'action.selected',
	'&:hover': { borderWidth: 3 },
}

/** The player with the number typed, or why there is not exactly this one. */
function playerWith(rows: readonly BoardRow[], typed: string): BoardRow | string {
	const number = typed.trim()
	if (!number) return 'Type the number of the player first.'
	const [player, ...others] = rows.filter((row) => row.number === number)
	if (!player) return `No player has the number ${typed}. Look at the board.`
	if (others.length > 0) {
		const names = [player, ...others].map((row) => row.name).join(' and ')
		return `${names} both have the number ${typed}. Open the right one from the board.`
	}
	return player
}

interface NextPlayerProps {
	day: Day
	/** Whether who works here assesses. */
	treat: boolean
	/** Nobody is left to be seen. */
	over: boolean
	station: StationId
	setStation: (station: StationId) => void
}
export function NextPlayer({ day, treat, over, station, setStation }: NextPlayerProps) {
	const [number, setNumber] = useState('')
	const [wrong, setWrong] = useState('')
	const [arrived, setArrived] = useState('')
	const arrive = async ({ playerId, name, number }: BoardRow) => {
		const { squadId } = day
		try {
			await change('squad.mark', { squadId, playerId, presence: 'here', at: 'check-in' })
			setNumber('')
			setArrived(`${name}, number ${number}, is here.`)
		} catch (error) {
			setWrong(wordsOf(error))
		}
	}
	const go = () => {
		setArrived('')
		const player = playerWith(day.rows, number)
		if (typeof player === 'string') setWrong(player)
		else if (treat) navigate(`/squad/${day.squadId}/${station}/${player.playerId}`)
		else void arrive(player)
	}
	return (
		<Form submit={go} sx={{ display: 'grid', gap: 2 }}>
			{treat && <Stations stations={day.stations} station={station} set={setStation} />}
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
		</Form>
	)
}

interface StationsProps {
	stations: Day['stations']
	station: StationId
	set: (station: StationId) => void
}
function Stations({ stations, station, set }: StationsProps) {
	return (
		<Box
			role="group"
			aria-label="Station at this desk"
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}
		>
			{stations.map(({ id, name }) => (
				<Button
					key={id}
					size="large"
					variant="outlined"
					aria-pressed={id === station}
					onClick={() => set(id)}
					sx={id === station ? chosen : {}}
				>
					{name}
				</Button>
			))}
		</Box>
	)
}
