/** The queue: what is uncertain, what waits to be sent, and every document on its way. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useEffect } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { channelWords, kindWords } from '../../../shared/desk/outbox/item.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Outcome } from '../../parts/form.tsx'
import { Empty } from '../../parts/Page.tsx'
import { Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { change, type HostAction, type HostAnswer, useHostAction } from '../../query.ts'
import { filterTitles, firstFilter, shownItems } from './filters.ts'
import { StateChip } from './StateChip.tsx'

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
}
export function Queue({ list, filter, setFilter, owner }: QueueProps) {
	const action = useHostAction()
	useSendWhenOnline()
	const items = list.value?.items ?? []
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
				<Box sx={{ maxWidth: 280 }}>
					<Field label="Show" value={filter} set={setFilter} optional options={filterTitles} />
				</Box>
				<Items items={shownItems(items, filter)} filter={filter} />
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

const heads = ['Number', 'Player', 'Document', 'Recipient', 'Way', 'State', 'Owner', 'Due', 'Age']
function Items({ items, filter }: { items: readonly OutboxView[]; filter: string }) {
	return (
		<Rows
			label="Outbox"
			empty={
				filter === '' || filter === firstFilter ? (
					<NothingYet />
				) : (
					`Nothing here is ${filter.toLowerCase()}. Choose ${firstFilter} to see the rest.`
				)
			}
			figures={['Age']}
			heads={heads}
			rows={items.map((item) => ({
				key: item.itemId,
				cells: [
					<Open key="open" item={item} />,
					<Player key="player" item={item} />,
					<Document key="kind" item={item} />,
					item.recipient.name,
					channelWords[item.channel],
					<StateChip key="state" item={item} />,
					item.owner.name,
					<Due key="due" item={item} />,
					item.ageDays === 1 ? '1 day' : `${item.ageDays} days`,
				],
			}))}
		/>
	)
}
const NothingYet = () => (
	<Empty
		says="No document is on its way. Prepare one from a signed visit: it is checked here before it leaves."
		act={
			<Button variant="contained" onClick={() => navigate('/outbox/prepare')}>
				Prepare a document
			</Button>
		}
	/>
)
interface OfItem {
	item: OutboxView
}
function Open({ item }: OfItem) {
	return (
		<Link
			href={`#/outbox/item/${item.itemId}`}
			sx={{
				display: 'inline-flex',
				alignItems: 'center',
				minHeight: 44,
				fontWeight: 600,
				whiteSpace: 'nowrap',
			}}
		>
			{item.number}
		</Link>
	)
}
function Player({ item }: OfItem) {
	return (
		<Box>
			<Typography variant="body2">{item.playerName}</Typography>
			<Typography variant="body2" color="textSecondary">
				born {dayInWords(item.birthDate)}
			</Typography>
		</Box>
	)
}
function Document({ item }: OfItem) {
	return (
		<Box>
			<Typography variant="body2">{kindWords[item.kind]}</Typography>
			{item.newerVersion && (
				<Typography variant="body2" color="error">
					version {item.version}; version {item.newerVersion} is newer
				</Typography>
			)}
		</Box>
	)
}
function Due({ item }: OfItem) {
	return (
		<Typography
			variant="body2"
			{...(item.overdue ? { color: 'error', sx: { fontWeight: 600 } } : {})}
		>
			{dayInWords(item.due)}
			{item.overdue ? ', overdue' : ''}
		</Typography>
	)
}
