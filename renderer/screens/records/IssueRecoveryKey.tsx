/** The owner prints a new recovery key: the paper was lost, seen, or never confirmed. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { change, type HostAction } from '../../query.ts'

export function IssueRecoveryKey({
	action,
	issued,
}: {
	action: HostAction
	issued: (recoveryKey: string) => void
}) {
	const [passphrase, setPassphrase] = useState('')
	const issue = async () => {
		if (!passphrase) throw new Error('Your passphrase is empty. Type it first.')
		const { recoveryKey } = await change('session.newRecoveryKey', { passphrase })
		setPassphrase('')
		issued(recoveryKey)
		return ''
	}
	return (
		<Form label="Recovery key" submit={() => action.run(issue)}>
			<Sheet
				title="Recovery key"
				hint={
					'Opens the records if your passphrase is forgotten. Print a new one when the paper is ' +
					'lost, was seen by others, or was never confirmed. A confirmed paper works until the new ' +
					'one is confirmed; from then on it opens nothing.'
				}
			>
				<Field
					label="Your passphrase"
					type="password"
					autoComplete="current-password"
					value={passphrase}
					set={setPassphrase}
				/>
				<Box sx={{ alignSelf: 'center' }}>
					<Button type="submit" variant="outlined" disabled={action.busy || !passphrase}>
						Issue a new recovery key
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
