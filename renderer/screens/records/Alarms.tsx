/** What was found amiss with the records: read by the owner, and settled with a reason. */
import { Alert, AlertTitle, Box, Button } from '@mui/material'
import { useState } from 'react'
import { Field, Outcome } from '../../parts/form.tsx'
import { timeWords } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'

export function Alarms() {
	const { value } = useHost('audit.alarms', {})
	const [reason, setReason] = useState('')
	const action = useHostAction()
	const alarms = value?.alarms ?? []
	if (alarms.length === 0) return null
	const settle = async () => {
		await change('audit.settle', { reason })
		setReason('')
		return 'Noted in the audit trail.'
	}
	return (
		<Alert
			severity="error"
			role="region"
			aria-label="Something is wrong with the records"
			sx={{ my: 1 }}
		>
			<AlertTitle>Something is wrong with the records</AlertTitle>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{alarms.map(({ at, says }) => (
					<li key={says}>
						{timeWords(at)}: {says}
					</li>
				))}
			</Box>
			<p>
				This is said at each unlock until you have looked into it. Look into a backup, ask who had
				the files in hand, and check the trail. Then write what you found. Nothing is changed by it:
				the records go on as they are now.
			</p>
			<Box sx={{ display: 'flex', gap: 2, alignItems: 'end', flexWrap: 'wrap' }}>
				<Box sx={{ flex: '1 1 320px' }}>
					<Field label="What you found" value={reason} set={setReason} />
				</Box>
				<Button
					variant="contained"
					disabled={action.busy || reason.trim() === ''}
					onClick={() => action.run(settle)}
				>
					I have looked into it
				</Button>
			</Box>
			<Outcome of={action} />
		</Alert>
	)
}
