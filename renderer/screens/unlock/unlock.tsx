/** Opening the workstation: passphrase, or the paper recovery key with a new passphrase. */
import { Box, Button, Paper, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { wordsOf } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { change } from '../../query.ts'

export function Unlock({ clinicName }: { clinicName?: string | undefined }) {
	const [passphrase, setPassphrase] = useState('')
	const [recoveryKey, setRecoveryKey] = useState('')
	const [byKey, setByKey] = useState(false)
	const [busy, setBusy] = useState(false)
	const [says, setSays] = useState('')
	const problem = () => {
		if (!byKey) return passphrase ? '' : 'Passphrase is empty. Type it, or use the recovery key.'
		if (!recoveryKey.trim()) return 'Recovery key is empty. Type it as it stands on the paper.'
		return passphrase.length < leastPassphrase
			? `New passphrase has ${passphrase.length} characters. Choose one of ${leastPassphrase} ` +
					'or more.'
			: ''
	}
	const go = async () => {
		const found = problem()
		setSays(found)
		if (found) return
		setBusy(true)
		try {
			if (byKey)
				await change('session.unlockWithRecoveryKey', {
					recoveryKey: recoveryKey.trim(),
					newPassphrase: passphrase,
				})
			else await change('session.unlock', { passphrase })
		} catch (error) {
			setSays(wordsOf(error))
		} finally {
			setBusy(false)
		}
	}
	return (
		<Paper
			variant="outlined"
			sx={{ maxWidth: 480, mx: 'auto', mt: { xs: 2, sm: 8 }, p: { xs: 3, sm: 4 } }}
		>
			<Stack
				component="form"
				noValidate
				spacing={2.5}
				onSubmit={(event) => {
					event.preventDefault()
					void go()
				}}
			>
				<Box>
					<Typography variant="h1">Unlock</Typography>
					<Typography color="textSecondary" sx={{ mt: 0.5 }}>
						{clinicName ? `The records of ${clinicName} are locked.` : 'The records are locked.'}
					</Typography>
				</Box>
				{byKey && (
					<Field
						label="Recovery key"
						value={recoveryKey}
						set={setRecoveryKey}
						focus
						hint="As it stands on the paper."
					/>
				)}
				<Field
					key={String(byKey)}
					label={byKey ? 'New passphrase' : 'Passphrase'}
					type="password"
					autoComplete={byKey ? 'new-password' : 'current-password'}
					value={passphrase}
					set={setPassphrase}
					focus={!byKey}
					hint={
						byKey
							? `${leastPassphrase} characters or more; it takes the place of the old one.`
							: undefined
					}
				/>
				<Trouble says={says} />
				<Button type="submit" variant="contained" size="large" disabled={busy}>
					Unlock
				</Button>
				<Button
					onClick={() => {
						setByKey(!byKey)
						setPassphrase('')
						setSays('')
					}}
				>
					{byKey ? 'Use the passphrase' : 'Use the recovery key'}
				</Button>
			</Stack>
		</Paper>
	)
}
