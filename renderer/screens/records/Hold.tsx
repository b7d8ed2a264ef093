/**
 * A hold on one player's record: complaint, claim or dispute. While it stands nothing of the record
 * can be destroyed.
 */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { Field, Outcome } from '../../parts/form.tsx'
import { change, useHostAction } from '../../query.ts'

const leastReason = 3
/**
 * `held` as far as it is known: without it both ways are offered, and the host refuses the one that
 * does not fit.
 */
export function Hold({
	playerId,
	held,
	changed,
}: {
	playerId: string
	held?: boolean
	changed?: () => void
}) {
	const [reason, setReason] = useState('')
	const action = useHostAction()
	const set = (on: boolean) => () =>
		action.run(async () => {
			if (reason.trim().length < leastReason)
				throw new Error(
					`The reason is ${reason.trim() ? `"${reason.trim()}"` : 'empty'}. Write at least ` +
						`${leastReason} letters.`,
				)
			await change('retention.hold', { playerId, reason, on })
			setReason('')
			changed?.()
			return on ? 'On hold: nothing of this record can be destroyed.' : 'The hold was released.'
		})
	return (
		<Box sx={{ display: 'grid', gap: 1.5, maxWidth: 520 }}>
			<Field label="Reason for the hold or its release" value={reason} set={setReason} />
			<Box sx={{ display: 'flex', gap: 1 }}>
				{held !== true && (
					<Button variant="outlined" disabled={action.busy} onClick={set(true)}>
						Put on hold
					</Button>
				)}
				{held !== false && (
					<Button variant="outlined" disabled={action.busy} onClick={set(false)}>
						Release the hold
					</Button>
				)}
			</Box>
			<Outcome of={action} />
		</Box>
	)
}
