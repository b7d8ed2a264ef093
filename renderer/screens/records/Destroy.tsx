/** Destroying a record for good: its name typed once more, and a reason. */
import { Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import { Field, Form } from '../../parts/form.tsx'
import { change, type HostAction } from '../../query.ts'

export function Destroy({
	player,
	action: { busy, run },
	close,
}: {
	player: { playerId: string; name: string }
	action: HostAction
	close: () => void
}) {
	const [name, setName] = useState('')
	const [reason, setReason] = useState('')
	const [alsoBackups, setAlsoBackups] = useState(true)
	const destroy = async () => {
		const { records, backupsThatStillHold, says } = await change('retention.destroy', {
			playerId: player.playerId,
			name,
			reason,
			alsoBackups,
		})
		close()
		const older = backupsThatStillHold.length
		return [
			`${records} records were destroyed and a line was kept in the register.`,
			older > 0 ? `${older} older backups still hold them.` : '',
			...says,
			'Copies on sticks that are not plugged in still hold them too.',
		]
			.filter(Boolean)
			.join(' ')
	}
	return (
		<Form sx={{ display: 'grid', gap: 2, maxWidth: 520 }} submit={() => run(destroy)}>
			<Typography>
				The record of <strong>{player.name}</strong> will be removed for good. Type the name to
				confirm.
			</Typography>
			<Field label="Name of the player" value={name} set={setName} focus />
			<Field label="Reason" value={reason} set={setReason} />
			<FormControlLabel
				control={
					<Checkbox
						checked={alsoBackups}
						onChange={(event) => setAlsoBackups(event.target.checked)}
					/>
				}
				label="Make a new backup and delete the older ones of this PC, which still hold it"
			/>
			<Box sx={{ display: 'flex', gap: 1 }}>
				<Button type="submit" variant="contained" color="error" disabled={busy}>
					Destroy this record
				</Button>
				<Button onClick={close}>Keep it</Button>
			</Box>
		</Form>
	)
}
