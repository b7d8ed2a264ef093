/**
 * What may be destroyed by the clinic's rule, what is held, and the register of what was destroyed.
 */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Answered } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Outcome } from '../../parts/form.tsx'
import { acts, Panel, Rows } from '../../parts/panels.tsx'
import { useHost, useHostAction } from '../../query.ts'
import { Destroy } from './Destroy.tsx'
import { Hold } from './Hold.tsx'

type Due = OutputOf<'retention.due'>
interface Named {
	playerId: string
	name: string
}
interface Held extends Named {
	held: boolean
}
function RowButton({ says, of, act }: { says: string; of: string; act: () => void }) {
	return (
		<Button size="small" variant="outlined" aria-label={of} onClick={act}>
			{says}
		</Button>
	)
}
function DueRows({
	due,
	hold,
	destroy,
}: {
	due: Due['due']
	hold: (player: Held) => void
	destroy: (player: Named) => void
}) {
	return (
		<Rows
			label="Records due"
			heads={['Player', 'Born', 'Last entry', 'Kept until', acts]}
			empty="No record is past its time: nothing to do here."
			rows={due.map((player) => ({
				key: player.playerId,
				cells: [
					player.name,
					dayInWords(player.birthDate),
					dayInWords(player.lastEntry),
					dayInWords(player.keepUntil),
					<Box key="choose" sx={{ display: 'flex', gap: 1 }}>
						<RowButton
							says="Hold"
							of={`Hold the record of ${player.name}`}
							act={() => hold({ ...player, held: false })}
						/>
						<RowButton
							says="Destroy"
							of={`Destroy the record of ${player.name}`}
							act={() => destroy(player)}
						/>
					</Box>,
				],
			}))}
		/>
	)
}
function OnHold({
	players,
	holding,
	setHolding,
}: {
	players: Due['held']
	holding: Held | undefined
	setHolding: (player: Held | undefined) => void
}) {
	return (
		<Panel
			title="On hold"
			hint={
				'Complaint, claim or dispute: kept without end until released. A record that is not due ' +
				"is put on hold on the player's page."
			}
		>
			<Rows
				label="Records on hold"
				heads={['Player', 'Reason', acts]}
				empty="No record is on hold."
				rows={players.map((player) => ({
					key: player.playerId,
					cells: [
						player.name,
						player.reason,
						<RowButton
							key="release"
							says="Release"
							of={`Release the hold of ${player.name}`}
							act={() => setHolding({ ...player, held: true })}
						/>,
					],
				}))}
			/>
			{holding && (
				<Box>
					<Typography sx={{ mb: 1 }}>
						{holding.held ? 'Release the hold of' : 'Put on hold'} <strong>{holding.name}</strong>
					</Typography>
					<Hold
						key={holding.playerId}
						playerId={holding.playerId}
						held={holding.held}
						changed={() => setHolding(undefined)}
					/>
				</Box>
			)}
		</Panel>
	)
}
function Register() {
	const register = useHost('retention.register', {})
	return (
		<Panel title="Register of destruction">
			<Answered of={register} what="the register">
				{({ lines }) => (
					<Rows
						label="Register"
						heads={['Name', 'Period covered', 'Destroyed', 'By', 'Reason']}
						empty="Nothing was destroyed yet."
						rows={lines.map((line) => ({
							key: `${line.playerId} ${line.destroyedOn}`,
							cells: [
								line.name,
								`${dayInWords(line.from)} to ${dayInWords(line.to)}`,
								dayInWords(line.destroyedOn),
								line.by,
								line.reason,
							],
						}))}
					/>
				)}
			</Answered>
		</Panel>
	)
}
export function Retention() {
	const answer = useHost('retention.due', {})
	const [chosen, setChosen] = useState<Named>()
	const [holding, setHolding] = useState<Held>()
	const action = useHostAction()
	return (
		<Answered of={answer} what="the retention">
			{({ rule, due, held }) => (
				<>
					<Outcome of={action} />
					<Panel
						title="Due"
						hint={`Rule of the clinic: ${rule}. Local law decides; this only counts.`}
					>
						<DueRows due={due} hold={setHolding} destroy={setChosen} />
						{chosen && (
							<Destroy player={chosen} action={action} close={() => setChosen(undefined)} />
						)}
					</Panel>
					<OnHold players={held} holding={holding} setHolding={setHolding} />
					<Register />
				</>
			)}
		</Answered>
	)
}
