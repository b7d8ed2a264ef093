/** What can be done next with an item: checked and released, given out, settled, sent again. */
import { Alert, Box, Button, Link, Stack } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { call } from '../../host.ts'
import { Field, Outcome } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { type HostAction, useHostAction } from '../../query.ts'
import { type Act, actsOf } from './acts.ts'
import { Release } from './Release.tsx'

/** Characters of a note below which it says nothing. */
const shortestNote = 3

interface NextProps {
	item: OutboxView
	/** Undefined until the first page is opened. */
	look: OutputOf<'outbox.look'> | undefined
	/** asks for the page and its warnings anew */
	lookAgain: () => void
	/** Whether the item is owned by who works here. */
	mine: boolean
}
export function Next({ item, look, lookAgain, mine }: NextProps) {
	const [note, setNote] = useState('')
	const action = useHostAction()
	const acts = actsOf(item, note, mine)
	const noteless = note.trim().length < shortestNote
	const run = ({ work, done }: Pick<Act, 'work' | 'done'>) =>
		action.run(async () => {
			await work()
			setNote('')
			return done
		})
	const asksNote = acts.filter((act) => act.needsNote && !act.besides).map(({ label }) => label)
	return (
		<Panel title="Next">
			<Outcome of={action} />
			{item.breachId && (
				<Alert severity="error">
					Marked as sent in error.{' '}
					<Link href="#/outbox/errors" color="inherit" sx={{ fontWeight: 600 }}>
						Go on with the steps
					</Link>
				</Alert>
			)}
			{item.state === 'to-check' && (
				<Release
					// another warning is ticked anew
					key={look?.warnings.join('\n')}
					item={item}
					look={look}
					again={lookAgain}
					busy={action.busy}
					run={run}
				/>
			)}
			{item.protection === 'password' && item.state !== 'closed' && !item.breachId && (
				<Password itemId={item.itemId} action={action} />
			)}
			<Field
				label="Note or reason"
				value={note}
				set={setNote}
				optional
				rows={2}
				hint={
					asksNote.length > 0
						? `Write a few words before: ${asksNote.join(', ')}.`
						: 'Kept with what you do next.'
				}
			/>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{acts.map((act) => (
					<ActButton
						key={act.label}
						act={act}
						off={
							action.busy || (item.sending && !act.wrong) || (act.needsNote === true && noteless)
						}
						run={run}
					/>
				))}
			</Box>
		</Panel>
	)
}

interface ActButtonProps {
	act: Act
	off: boolean
	run: (act: Act) => void
}
function ActButton({ act, off, run }: ActButtonProps) {
	return (
		<Button
			variant={act.main ? 'contained' : 'outlined'}
			color={act.wrong ? 'error' : 'primary'}
			disabled={off}
			onClick={() => run(act)}
		>
			{act.label}
		</Button>
	)
}

/** The password of a copy: shown when it is asked for, since asking is on record. */
function Password({ itemId, action }: { itemId: string; action: HostAction }) {
	const [shown, setShown] = useState<OutputOf<'outbox.password'>>()
	const show = () =>
		action.run(async () => {
			setShown(await call('outbox.password', { itemId }))
			return ''
		})
	return (
		<Stack spacing={1} sx={{ alignItems: 'flex-start' }}>
			<Button variant="outlined" disabled={action.busy} onClick={show}>
				Show the password
			</Button>
			{shown && (
				<Alert severity="info" role="status">
					Password for {shown.recipient}:{' '}
					<Box component="strong" sx={{ fontFamily: 'monospace', fontSize: '1.2rem' }}>
						{shown.password}
					</Box>
					. Give it{' '}
					{shown.phone ? `by telephone (${shown.phone}) or in person` : 'by telephone or in person'}
					, never by e-mail.
				</Alert>
			)}
		</Stack>
	)
}
