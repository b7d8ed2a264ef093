/** The pages for guardians and players of age, put into the outbox in one step. */
import { Alert, Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { channelWords, isMail } from '../../../shared/desk/outbox/item.ts'
import { Outcome } from '../../parts/form.tsx'
import { counted } from '../../parts/Needs.tsx'
import { Way } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'

type Lines = OutputOf<'squad.toFamilies'>['lines']

export function Families({ squadId }: { squadId: string }) {
	const [lines, setLines] = useState<Lines>([])
	const action = useHostAction()
	const put = () =>
		action.run(async () => {
			const answer = await change('squad.toFamilies', { squadId })
			setLines(answer.lines)
			return saidOf(answer.lines)
		})
	const left = lines.filter(({ itemId }) => itemId === undefined)
	return (
		<Box sx={{ display: 'grid', gap: 1 }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}>
				<Button variant="outlined" disabled={action.busy} onClick={put}>
					Put the pages for families into the outbox
				</Button>
				<Typography color="textSecondary">
					The guardian's page of a minor, the report of a player of age. Each is checked there.
				</Typography>
			</Box>
			<Outcome of={action} />
			{lines.length > left.length && <Way to="#/outbox">Open the outbox</Way>}
			{left.length > 0 && (
				<Alert severity="warning">
					{left.map(({ name, to, says }) => (
						<Typography key={`${name} ${says}`}>
							{name}
							{to && `, for ${to}`}: {says}
						</Typography>
					))}
				</Alert>
			)}
		</Box>
	)
}
/** How many go which way, and how many nowhere yet. */
function saidOf(lines: Lines): string {
	const put = lines.filter(({ itemId }) => itemId !== undefined)
	const byMail = put.filter(({ channel }) => channel && isMail(channel)).length
	return (
		`${counted(put.length, 'page')} put into the outbox: ${byMail} by e-mail, ` +
		`${put.length - byMail} to ${channelWords.print.toLowerCase()}.`
	)
}
