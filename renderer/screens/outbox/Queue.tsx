/** The queue: what is uncertain, what waits to be sent, and every document on its way. */
import { Alert, Box, Button, Link, Stack } from '@mui/material'
import { useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { Refused } from '../../parts/Answered.tsx'
import { besideField, Field, Outcome } from '../../parts/form.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { Panel, timeWords } from '../../parts/panels.tsx'
import { change, type HostAction, type HostAnswer, useHostAction } from '../../query.ts'
import { Chosen } from './Chosen.tsx'
import type { Choice } from './choosing.ts'
import { filterTitles, shownItems } from './filters.ts'
import { QueueRows } from './QueueRows.tsx'

type Listed = OutputOf<'outbox.list'>

/** The network is back: what waits is sent without waiting for the next try. */
function useSendWhenOnline(): void {
	useEffect(() => {
		const online = () => void change('outbox.sendNow', {}).catch(() => {})
		addEventListener('online', online)
		return () => removeEventListener('online', online)
	}, [])
}

interface QueueProps {
	list: HostAnswer<Listed>
	filter: string
	setFilter: (title: string) => void
	owner: boolean
	choice: Choice
	choose: (choice: Choice) => void
	lookThrough: (items: readonly OutboxView[]) => void
}
export function Queue({ list, filter, setFilter, owner, choice, choose, lookThrough }: QueueProps) {
	const action = useHostAction()
	useSendWhenOnline()
	const [words, setWords] = useState('')
	const items = list.value?.items ?? []
	const shown = shownItems(items, filter, words)
	return (
		<Stack spacing={2}>
			<Refused of={list} />
			<Outcome of={action} />
			<Uncertain count={items.filter((item) => item.state === 'uncertain').length} />
			{list.value && <WaitingToBeSent queue={list.value.queue} action={action} />}
			{list.value && !list.value.mailSet && <NoMailServer owner={owner} />}
			<Panel
				title="Queue"
				hint="Sorted by due day. Every document is checked beside its recipient before it leaves."
			>
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'start' }}>
					<Box sx={{ width: 280 }}>
						<Field label="Show" value={filter} set={setFilter} optional options={filterTitles} />
					</Box>
					<Box sx={{ width: 320 }}>
						<Field
							label="Find in the queue"
							value={words}
							set={setWords}
							optional
							hint="Player, recipient, document or number."
						/>
					</Box>
					<Box sx={besideField}>
						<PrintButton what="the queue" />
					</Box>
				</Box>
				<Chosen {...{ shown, choice, choose, lookThrough }} />
				<QueueRows {...{ filter, choice, choose }} items={shown} isFound={words.trim() !== ''} />
			</Panel>
		</Stack>
	)
}

function Uncertain({ count }: { count: number }) {
	if (count === 0) return null
	return (
		<Alert severity="error" role="alert">
			{count === 1 ? 'One message is uncertain' : `${count} messages are uncertain`}: the connection
			broke at the very end, and it may have arrived or not. Open it, ask the recipient, and note
			what you learn. Nothing is sent again by itself.
		</Alert>
	)
}

function WaitingToBeSent({ queue, action }: { queue: Listed['queue']; action: HostAction }) {
	if (queue.waiting === 0) return null
	const sendNow = () =>
		action.run(async () => {
			await change('outbox.sendNow', {})
			return 'Tried. The list shows what came of it.'
		})
	const next = queue.retryAt && `Next try ${timeWords(queue.retryAt)}.`
	const waits = queue.waiting === 1 ? 'One message waits' : `${queue.waiting} messages wait`
	return (
		<Alert severity="info" role="status">
			{waits} to be sent. {queue.says} {next}{' '}
			<Button size="small" variant="outlined" disabled={action.busy} onClick={sendNow}>
				Send now
			</Button>
		</Alert>
	)
}

function NoMailServer({ owner }: { owner: boolean }) {
	return (
		<Alert severity="info">
			No mail server is set, so nothing is e-mailed from here. Documents go as drafts for the mail
			program, on paper or by hand.{' '}
			{owner ? (
				<Link href="#/outbox/mail" color="inherit" sx={{ fontWeight: 600 }}>
					Set a mail server
				</Link>
			) : (
				'The owner can set one under Mail settings.'
			)}
		</Alert>
	)
}
