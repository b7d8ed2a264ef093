/** A person leaves: what is taken from them, and what an old copy still opens. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { change, type HostAction } from '../../query.ts'
import { mustBeGiven, oldCopies } from './ChangeKey.tsx'
import type { Person } from './People.tsx'

const keyStays =
	' The key of the records could not be changed: the recovery key was printed by an earlier ' +
	'version. Issue a new recovery key under My access, then change the key of the records here.'

export function TakeOff({
	person: { personId, name },
	action: { busy, run },
	close,
}: {
	person: Person
	action: HostAction
	close: () => void
}) {
	const [reason, setReason] = useState('left the clinic')
	const retire = async () => {
		const { keyNotChanged, needNewPassphrase } = await change('people.retire', {
			personId,
			reason,
		})
		close()
		const key = keyNotChanged
			? keyStays
			: ` The key of the records was changed. ${oldCopies}${mustBeGiven(needNewPassphrase)}`
		return `${name} can no longer unlock.${key}`
	}
	return (
		<Form label={`Take ${name} off`} submit={() => run(retire)}>
			<Sheet
				title={`Take ${name} off`}
				hint="Passphrase and PIN are taken away, and the key of the records is changed with it."
			>
				<Typography sx={{ gridColumn: '1 / -1' }}>{oldCopies}</Typography>
				<Field label="Reason" value={reason} set={setReason} />
				<Box sx={{ display: 'flex', gap: 1, alignItems: 'end' }}>
					<Button type="submit" variant="contained" disabled={busy}>
						Take off
					</Button>
					<Button onClick={close} disabled={busy}>
						Keep
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
