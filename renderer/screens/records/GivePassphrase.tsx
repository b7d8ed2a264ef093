/** The owner gives a person a new passphrase: a forgotten one, or one who comes back. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { Form, Sheet } from '../../parts/form.tsx'
import { NewPassphrase } from '../../parts/NewSecret.tsx'
import { notTyped, passphraseProblems, refuseProblems } from '../../parts/secrets.ts'
import { change, type HostAction } from '../../query.ts'
import type { Person } from './People.tsx'

export function GivePassphrase({
	person: { personId, name, registration, role },
	names,
	action: { busy, run },
	close,
}: {
	person: Person
	names: readonly string[]
	action: HostAction
	close: () => void
}) {
	const [typed, setTyped] = useState(notTyped)
	const give = async () => {
		refuseProblems(passphraseProblems('New passphrase', typed))
		// the owner's own stands under My access
		if (role === 'owner') return ''
		await change('people.save', { personId, name, registration, role, passphrase: typed.once })
		close()
		return `${name} unlocks with the new passphrase, and is asked to change it then.`
	}
	return (
		<Form label={`New passphrase for ${name}`} submit={() => run(give)}>
			<Sheet
				title={`New passphrase for ${name}`}
				hint="The old one opens nothing from then on. Tell the person the new one by word of mouth."
			>
				<NewPassphrase title="New passphrase" typed={typed} put={setTyped} names={names} />
				<Box sx={{ display: 'flex', gap: 1, alignItems: 'center' }}>
					<Button type="submit" variant="contained" disabled={busy}>
						Give this passphrase
					</Button>
					<Button onClick={close} disabled={busy}>
						Leave as it is
					</Button>
				</Box>
				{busy && (
					<Typography role="status" color="textSecondary">
						Sealing the key for {name}. This takes a few seconds.
					</Typography>
				)}
			</Sheet>
		</Form>
	)
}
