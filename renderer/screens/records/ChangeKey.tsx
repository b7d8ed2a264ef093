/** The key of the records: what changing it does, and what it cannot do. */
import { Box, Button, Typography } from '@mui/material'
import { Outcome } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'

/** What an old copy still opens: the same words wherever the key is changed. */
export const oldCopies =
	'Whoever has an older copy or backup of the records, and a passphrase of that time, can still ' +
	'read what stands in it.'

/** Who must be given a new passphrase, in words; '' where nobody must. */
export const mustBeGiven = (names: readonly string[] | undefined): string =>
	names
		? ` ${names.join(', ')} did not unlock since the upgrade: give each of them a new passphrase ` +
			'here, as the old one does not open the new key.'
		: ''

export function ChangeKey() {
	const action = useHostAction()
	const changeIt = async () => {
		const { needNewPassphrase } = await change('people.changeDataKey', {})
		return (
			'The key of the records was changed. Everybody unlocks as before.' +
			mustBeGiven(needNewPassphrase)
		)
	}
	return (
		<Panel
			title="Key of the records"
			hint={
				'What is written from then on is sealed by a new key. Everybody keeps their passphrase, and ' +
				'the recovery key stays. Change it where a passphrase or a copy may be in wrong hands.'
			}
		>
			<Typography>{oldCopies}</Typography>
			<Box>
				<Button variant="outlined" disabled={action.busy} onClick={() => action.run(changeIt)}>
					Change the key of the records
				</Button>
			</Box>
			<Outcome of={action} />
		</Panel>
	)
}
