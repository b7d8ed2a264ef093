/**
 * The outbox room: the queue, one item beside its page, preparing, delivery reports, mail settings,
 * sent in error.
 */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { Page } from '../../parts/Page.tsx'
import { type HostAnswer, useHost } from '../../query.ts'
import { Breaches } from './Breaches.tsx'
import { type Choice, nothingChosen } from './choosing.ts'
import { openClocks } from './clocks.ts'
import { firstFilter, waitingCounts } from './filters.ts'
import { Item } from './Item.tsx'
import { LookThrough } from './LookThrough.tsx'
import { Mail } from './Mail.tsx'
import { Prepare } from './Prepare.tsx'
import { Queue } from './Queue.tsx'
import { Reports } from './Reports.tsx'
import { Unsent } from './Unsent.tsx'

const pages = [
	['queue', 'Queue'],
	['unsent', 'Signed, not sent'],
	['prepare', 'Prepare a document'],
	['reports', 'Delivery reports'],
	['errors', 'Sent in error'],
	['mail', 'Mail settings'],
] as const
/** How often the queue is looked at again. */
const lookEveryMs = 4000

type Listed = OutputOf<'outbox.list'>
interface OutboxScreenProps {
	page: string | undefined
	item: string | undefined
	/** Who works here: mail settings are the owner's. */
	person: OutputOf<'session.status'>['person']
}

export function OutboxScreen({ page = 'queue', item, person }: OutboxScreenProps) {
	const list = useHost('outbox.list', {}, { againAfterMs: () => lookEveryMs })
	const [filter, setFilter] = useState(firstFilter)
	const [choice, choose] = useState(nothingChosen)
	/** what is looked through, one after another */
	const [walk, setWalk] = useState<readonly string[]>([])
	const lookThrough = (items: readonly OutboxView[]) => {
		setWalk(items.map(({ itemId }) => itemId))
		navigate('/outbox/look')
	}
	return (
		<Page
			title="Outbox"
			room={{
				label: 'Outbox',
				pages: pages.map(([name, title]) => ({
					to: name === 'queue' ? '#/outbox' : `#/outbox/${name}`,
					title,
					here: name === page || (name === 'prepare' && page === 'player'),
				})),
			}}
		>
			{list.value && page !== 'item' && page !== 'look' && (
				<Waiting
					items={list.value.items}
					show={(title) => {
						setFilter(title)
						navigate('/outbox')
					}}
				/>
			)}
			<OutboxPage
				{...{ page, item, person, list, filter, setFilter, choice, choose, walk, lookThrough }}
			/>
		</Page>
	)
}

interface OutboxPageProps extends OutboxScreenProps {
	page: string
	list: HostAnswer<Listed>
	filter: string
	setFilter: (title: string) => void
	choice: Choice
	choose: (choice: Choice) => void
	walk: readonly string[]
	lookThrough: (items: readonly OutboxView[]) => void
}
function OutboxPage({ page, item, person, walk, ...queue }: OutboxPageProps) {
	const { list } = queue
	const owner = person?.role === 'owner'
	if (page === 'item' && item) return <Item key={item} itemId={item} personId={person?.personId} />
	// nothing stands before the counts over it are known, so nothing is pushed down
	if (list.value === undefined && list.says === '') return null
	switch (page) {
		case 'queue':
			return <Queue {...queue} owner={owner} />
		case 'look':
			return (
				<LookThrough
					key={walk.join()}
					itemIds={walk}
					list={list}
					released={() => queue.choose(nothingChosen)}
				/>
			)
		case 'unsent':
			return <Unsent />
		case 'prepare':
		case 'player':
			return (
				<Prepare
					key={item ?? 'any'}
					playerId={page === 'player' ? item : undefined}
					mailSet={list.value?.mailSet ?? true}
				/>
			)
		case 'reports':
			return <Reports />
		case 'errors':
			return <Breaches />
		case 'mail':
			return <Mail owner={owner} />
		default:
			return null
	}
}

interface WaitingProps {
	items: Listed['items']
	/** Told the title of the filter that is to be shown. */
	show: (title: string) => void
}
function Waiting({ items, show }: WaitingProps) {
	const counts = waitingCounts(items)
	const clocks = openClocks(useHost('breaches.list', {}).value?.breaches ?? [])
	return (
		<Box
			role="group"
			aria-label="What waits"
			sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}
		>
			{counts.length === 0 && clocks.length === 0 && (
				<Typography color="textSecondary">
					Nothing waits: nothing to check, nothing returned.
				</Typography>
			)}
			{clocks.map(({ breachId, words }) => (
				<Button
					key={breachId}
					variant="contained"
					color="error"
					onClick={() => navigate('/outbox/errors')}
				>
					{words}
				</Button>
			))}
			{counts.map(({ words, count, filter, wrong }) => (
				<Button
					key={words}
					variant="outlined"
					color={wrong ? 'error' : 'primary'}
					onClick={() => show(filter)}
				>
					<Box component="strong" sx={{ fontSize: '1.25rem', mr: 1 }}>
						{count}
					</Box>
					{words}
				</Button>
			))}
		</Box>
	)
}
