/**
 * What may be destroyed by the clinic's rule, what is held, and the register of what was destroyed.
 */
import { Alert, Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { acts, Panel, Rows, useAction, useAnswer } from '../../parts/panels.tsx'
import { Hold } from './Hold.tsx'

export function Retention() {
	const { value, says, again } = useAnswer('retention.due', {})
	const lines = useAnswer('retention.register', {})
	const [chosen, setChosen] = useState<{ playerId: string; name: string }>()
	const [holding, setHolding] = useState<{ playerId: string; name: string; held: boolean }>()
	const [form, setForm] = useState({ name: '', reason: '' })
	const [alsoBackups, setAlsoBackups] = useState(true)
	const action = useAction()
	const destroy = async () => {
		if (!chosen) return ''
		const { records, backupsThatStillHold } = await call('retention.destroy', {
			playerId: chosen.playerId,
			name: form.name,
			reason: form.reason,
			alsoBackups,
		})
		setChosen(undefined)
		setForm({ name: '', reason: '' })
		again()
		lines.again()
		return (
			`${records} records were destroyed and a line was kept in the ` +
			`register.${backupsThatStillHold.length ? ` ${backupsThatStillHold.length} older backups still hold them.` : ''} ` +
			'Copies on sticks that are not plugged in still hold them too.'
		)
	}
	return (
		<>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Panel
				title="Due"
				hint={value && `Rule of the clinic: ${value.rule}. Local law decides; this only counts.`}
			>
				<Rows
					label="Records due"
					heads={['Player', 'Born', 'Last entry', 'Kept until', acts]}
					empty="No record is past its time: nothing to do here."
					rows={(value?.due ?? []).map((one) => ({
						key: one.playerId,
						cells: [
							one.name,
							dayInWords(one.birthDate),
							dayInWords(one.lastEntry),
							dayInWords(one.keepUntil),
							<Box key="choose" sx={{ display: 'flex', gap: 1 }}>
								<Button
									size="small"
									variant="outlined"
									aria-label={`Hold the record of ${one.name}`}
									onClick={() => setHolding({ ...one, held: false })}
								>
									Hold
								</Button>
								<Button
									size="small"
									variant="outlined"
									aria-label={`Destroy the record of ${one.name}`}
									onClick={() => setChosen(one)}
								>
									Destroy
								</Button>
							</Box>,
						],
					}))}
				/>
				{chosen && (
					<Box
						component="form"
						noValidate
						sx={{ display: 'grid', gap: 2, maxWidth: 520 }}
						onSubmit={(event: React.FormEvent) => {
							event.preventDefault()
							action.run(destroy)
						}}
					>
						<Typography>
							The record of <strong>{chosen.name}</strong> will be removed for good. Type the name
							to confirm.
						</Typography>
						<Field
							label="Name of the player"
							value={form.name}
							set={(name) => setForm((now) => ({ ...now, name }))}
							focus
						/>
						<Field
							label="Reason"
							value={form.reason}
							set={(reason) => setForm((now) => ({ ...now, reason }))}
						/>
						<FormControlLabel
							control={
								<Checkbox
									checked={alsoBackups}
									onChange={(event) => setAlsoBackups(event.target.checked)}
								/>
							}
							label="Make a new backup and delete the older ones, which still hold it"
						/>
						<Box sx={{ display: 'flex', gap: 1 }}>
							<Button type="submit" variant="contained" color="error" disabled={action.busy}>
								Destroy this record
							</Button>
							<Button onClick={() => setChosen(undefined)}>Keep it</Button>
						</Box>
					</Box>
				)}
			</Panel>
			<Panel
				title="On hold"
				hint="Complaint, claim or dispute: kept without end until released. A record that is not due is put on hold on the player's page."
			>
				<Rows
					label="Records on hold"
					heads={['Player', 'Reason', acts]}
					empty="No record is on hold."
					rows={(value?.held ?? []).map((one) => ({
						key: one.playerId,
						cells: [
							one.name,
							one.reason,
							<Button
								key="release"
								size="small"
								variant="outlined"
								aria-label={`Release the hold of ${one.name}`}
								onClick={() => setHolding({ ...one, held: true })}
							>
								Release
							</Button>,
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
							changed={() => {
								setHolding(undefined)
								again()
							}}
						/>
					</Box>
				)}
			</Panel>
			<Panel title="Register of destruction">
				<Rows
					label="Register"
					heads={['Name', 'Period covered', 'Destroyed', 'By', 'Reason']}
					empty="Nothing was destroyed yet."
					rows={(lines.value?.lines ?? []).map((line) => ({
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
			</Panel>
		</>
	)
}
