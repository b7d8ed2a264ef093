/** Opening the workstation: passphrase, or the paper recovery key with a new passphrase. */
import { Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { call, wordsOf } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'

export function Unlock({ done }: { done: () => void }) {
	const [passphrase, setPassphrase] = useState('')
	const [recoveryKey, setRecoveryKey] = useState('')
	const [byKey, setByKey] = useState(false)
	const [says, setSays] = useState('')
	const go = async () => {
		try {
			if (byKey) await call('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase: passphrase })
			else await call('session.unlock', { passphrase })
			done()
		} catch (error) { setSays(wordsOf(error)) }
	}
	return <Stack component="form" spacing={2} sx={{ maxWidth: 480 }} onSubmit={(event) => { event.preventDefault(); void go() }}>
		<Typography variant="h1">Unlock</Typography>
		{byKey && <Field label="Recovery key" value={recoveryKey} set={setRecoveryKey} />}
		<Field label={byKey ? 'New passphrase' : 'Passphrase'} type="password" value={passphrase} set={setPassphrase} focus />
		<Trouble says={says} />
		<Button type="submit" variant="contained">Unlock</Button>
		<Button onClick={() => setByKey(!byKey)}>{byKey ? 'Use the passphrase' : 'Use the recovery key'}</Button>
	</Stack>
}
