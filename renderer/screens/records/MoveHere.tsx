/** On a PC without records: bring them from a backup or a pack. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { call } from '../../host.ts'
import { orCancelled } from '../../parts/cancelled.ts'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { Field, Outcome } from '../../parts/form.tsx'
import { PackProgress } from '../../parts/PackProgress.tsx'
import { Panel } from '../../parts/panels.tsx'
import { useHostAction } from '../../query.ts'

/** @param opened told once a pack stands here: nothing is left to set up */
export function MoveHere({ done, opened }: { done: () => void; opened?: () => void }) {
	const [file, setFile] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [key, setKey] = useState('')
	const action = useHostAction()
	if (key)
		return (
			<Box sx={{ maxWidth: 860, mx: 'auto', mt: 4, display: 'grid', gap: 2 }}>
				<Typography variant="h1">The pack was opened</Typography>
				<Alert severity="success" role="status">
					The records of the pack are on this PC. The passphrase of the pack unlocks them.
				</Alert>
				<Panel
					title="Recovery key"
					hint={
						'It opens these records should the passphrase be forgotten. It is shown only now: ' +
						'write it down, and keep it apart from this PC.'
					}
				>
					<Typography
						sx={{ fontFamily: 'monospace', fontSize: '1.25rem', overflowWrap: 'anywhere' }}
					>
						{key}
					</Typography>
					<Box>
						<Button variant="contained" onClick={done}>
							Go on to unlock
						</Button>
					</Box>
				</Panel>
			</Box>
		)
	return (
		<Box
			component="form"
			noValidate
			sx={{ maxWidth: 860, mx: 'auto', mt: 4 }}
			onSubmit={(event: React.FormEvent) => {
				event.preventDefault()
				action.run(() =>
					orCancelled(async () => {
						const { records, recoveryKey } = await call('session.moveHere', {
							file,
							...(passphrase ? { passphrase } : {}),
						})
						if (recoveryKey) {
							setKey(recoveryKey)
							opened?.()
						} else done()
						return `${records} records were brought here.`
					}),
				)
			}}
		>
			<Panel
				title="Or bring records from a backup or a pack"
				hint={
					'For a new PC, or where the records file was damaged: unlock afterwards with the ' +
					'passphrase or the recovery key of that backup. For an outreach day: open a pack here.'
				}
			>
				<PlaceField
					label="Backup or pack file"
					purpose="move-here"
					value={file}
					set={setFile}
					hint="A pack ends in .lwpack, a backup in .db. Plug the stick in first."
				/>
				<Field
					label="Pack passphrase"
					type="password"
					value={passphrase}
					set={setPassphrase}
					optional
					hint="Only for a pack (a file that ends in .lwpack); leave empty for a backup."
				/>
				<PackProgress busy={action.busy} of={['open']} />
				<Outcome of={action} />
				<Box>
					<Button type="submit" variant="outlined" disabled={action.busy || !file}>
						Bring these records here
					</Button>
				</Box>
			</Panel>
		</Box>
	)
}
