/**
 * The outbox room: the queue, one item beside its page, preparing, delivery reports, mail settings,
 * sent in error.
 */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import {
	channelWords,
	kindWords,
	outboxStates,
	stateWords,
} from '../../../shared/desk/outbox/item.ts'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel, Rows, timeWords, useAction, useAnswer } from '../../parts/panels.tsx'
import { RoomNav } from '../../parts/RoomNav.tsx'
import { Breaches } from './Breaches.tsx'
import { Item } from './Item.tsx'
import { Mail } from './Mail.tsx'
import { Prepare } from './Prepare.tsx'
import { StateChip } from './StateChip.tsx'

const pages = [
	['queue', 'Queue'],
	['prepare', 'Prepare a document'],
	['reports', 'Delivery reports'],
	['errors', 'Sent in error'],
	['mail', 'Mail settings'],
] as const
/** How often the queue is looked at again. */
const lookEveryMs = 4000

type Listed = OutputOf<'outbox.list'>
type Person = OutputOf<'session.status'>['person']
const open = 'All but closed'
const late = 'Overdue'
/**
 * What waits for somebody: shown over every page of the room, and each count opens its part of the
 * queue.
 */
const waits = [
	['to-check', 'to check'],
	['ready', 'ready'],
	['uncertain', 'uncertain'],
	['returned', 'returned'],
] as const
const isLate = (one: Listed['items'][number]) => one.overdue

/** @param person who works here: mail settings are the owner's */
export function OutboxScreen({
	page,
	item,
	person,
}: {
	page: string | undefined
	item: string | undefined
	person: Person
}) {
	const now = page ?? 'queue'
	const list = useAnswer('outbox.list', {})
	const { again } = list
	const [only, setOnly] = useState<string>(open)
	// biome-ignore lint/correctness/useExhaustiveDependencies: another page of the room is the event
	useEffect(() => {
		again()
		const timer = setInterval(again, lookEveryMs)
		return () => clearInterval(timer)
	}, [again, now, item])
	// nothing stands before the counts over it are known, so nothing is pushed down
	const known = list.value !== undefined || list.says !== ''
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Outbox</Typography>
			<RoomNav
				label="Outbox"
				pages={pages.map(([name, title]) => ({
					to: name === 'queue' ? '#/outbox' : `#/outbox/${name}`,
					title,
					here: name === now || (name === 'prepare' && now === 'player'),
				}))}
			/>
			{list.value && now !== 'item' && (
				<Waiting
					items={list.value.items}
					show={(state) => {
						setOnly(state)
						location.hash = '#/outbox'
					}}
				/>
			)}
			{known && now === 'queue' && (
				<Queue list={list} only={only} setOnly={setOnly} owner={person?.role === 'owner'} />
			)}
			{now === 'item' && item && <Item key={item} itemId={item} personId={person?.personId} />}
			{known && (now === 'prepare' || now === 'player') && (
				<Prepare
					key={item ?? 'any'}
					playerId={now === 'player' ? item : undefined}
					mailSet={list.value?.mailSet ?? true}
				/>
			)}
			{known && now === 'reports' && <Reports read={again} />}
			{known && now === 'errors' && <Breaches />}
			{known && now === 'mail' && <Mail owner={person?.role === 'owner'} />}
		</Stack>
	)
}
function Waiting({ items, show }: { items: Listed['items']; show: (state: string) => void }) {
	const counts = [
		...waits.map(([state, words]) => ({
			words,
			count: items.filter((item) => item.state === state).length,
			filter: stateWords[state] as string,
			wrong: state === 'uncertain' || state === 'returned',
		})),
		{ words: 'overdue', count: items.filter(isLate).length, filter: late, wrong: true },
	].filter((one) => one.count > 0)
	return (
		<Box
			role="group"
			aria-label="What waits"
			sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}
		>
			{counts.length === 0 && (
				<Typography color="textSecondary">
					Nothing waits: nothing to check, nothing returned.
				</Typography>
			)}
			{counts.map((count) => (
				<Button
					key={count.words}
					variant="outlined"
					color={count.wrong ? 'error' : 'primary'}
					onClick={() => show(count.filter)}
				>
					<Box component="strong" sx={{ fontSize: '1.25rem', mr: 1 }}>
						{count.count}
					</Box>
					{count.words}
				</Button>
			))}
		</Box>
	)
}
interface Queueing {
	list: { value: Listed | undefined; says: string; again: () => void }
	only: string
	setOnly: (only: string) => void
	owner: boolean
}
function Queue({ list: { value, says, again }, only, setOnly, owner }: Queueing) {
	const action = useAction()
	useEffect(() => {
		const online = () => {
			call('outbox.sendNow', {}).then(again, again)
		}
		addEventListener('online', online)
		return () => removeEventListener('online', online)
	}, [again])
	const all = value?.items ?? []
	const shown = all
		.filter((one) =>
			only === '' || only === open
				? one.state !== 'closed'
				: only === late
					? isLate(one)
					: stateWords[one.state] === only,
		)
		.sort((a, b) => (a.due < b.due ? -1 : a.due > b.due ? 1 : 0))
	const uncertain = all.filter((one) => one.state === 'uncertain').length
	return (
		<Stack spacing={2}>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			{uncertain > 0 && (
				<Alert severity="error" role="alert">
					{uncertain === 1 ? 'One message is uncertain' : `${uncertain} messages are uncertain`}:
					the connection broke at the very end, and it may have arrived or not. Open it, ask the
					recipient, and note what you learn. Nothing is sent again by itself.
				</Alert>
			)}
			{value && value.queue.waiting > 0 && (
				<Alert severity="info" role="status">
					{value.queue.waiting === 1 ? 'One message waits' : `${value.queue.waiting} messages wait`}{' '}
					to be sent. {value.queue.says}{' '}
					{value.queue.retryAt && `Next try ${timeWords(value.queue.retryAt)}.`}{' '}
					<Button
						size="small"
						variant="outlined"
						disabled={action.busy}
						onClick={() =>
							action.run(async () => {
								await call('outbox.sendNow', {})
								again()
								return 'Tried. The list shows what came of it.'
							})
						}
					>
						Send now
					</Button>
				</Alert>
			)}
			{value && !value.mailSet && (
				<Alert severity="info">
					No mail server is set, so nothing is e-mailed from here. Documents go as drafts for the
					mail program, on paper or by hand.{' '}
					{owner ? (
						<Link href="#/outbox/mail" color="inherit" sx={{ fontWeight: 600 }}>
							Set a mail server
						</Link>
					) : (
						'The owner can set one under Mail settings.'
					)}
				</Alert>
			)}
			<Panel
				title="Queue"
				hint="Sorted by due day. Every document is checked beside its recipient before it leaves."
			>
				<Box sx={{ maxWidth: 280 }}>
					<Field
						label="Show"
						value={only}
						set={setOnly}
						optional
						options={[open, late, ...outboxStates.map((outboxState) => stateWords[outboxState])]}
					/>
				</Box>
				<Rows
					label="Outbox"
					empty={
						only === '' || only === open
							? 'Nothing here. Choose Prepare a document to begin.'
							: `Nothing here is ${only.toLowerCase()}. Choose ${open} to see the rest.`
					}
					heads={[
						'Number',
						'Player',
						'Document',
						'Recipient',
						'Way',
						'State',
						'Owner',
						'Due',
						'Age',
					]}
					rows={shown.map((one) => ({
						key: one.itemId,
						cells: [
							<Link
								key="open"
								href={`#/outbox/item/${one.itemId}`}
								sx={{
									display: 'inline-flex',
									alignItems: 'center',
									minHeight: 44,
									fontWeight: 600,
									whiteSpace: 'nowrap',
								}}
							>
								{one.number}
							</Link>,
							<Box key="player">
								<Typography variant="body2">{one.playerName}</Typography>
								<Typography variant="body2" color="textSecondary">
									born {dayInWords(one.birthDate)}
								</Typography>
							</Box>,
							<Box key="kind">
								<Typography variant="body2">{kindWords[one.kind]}</Typography>
								{one.newerVersion && (
									<Typography variant="body2" color="error">
										version {one.version}; version {one.newerVersion} is newer
									</Typography>
								)}
							</Box>,
							one.recipient.name,
							channelWords[one.channel],
							<StateChip key="state" one={one} />,
							one.owner.name,
							<Typography
								key="due"
								variant="body2"
								{...(one.overdue ? { color: 'error', sx: { fontWeight: 600 } } : {})}
							>
								{dayInWords(one.due)}
								{one.overdue ? ', overdue' : ''}
							</Typography>,
							one.ageDays === 1 ? '1 day' : `${one.ageDays} days`,
						],
					}))}
				/>
			</Panel>
		</Stack>
	)
}
function Reports({ read: took }: { read: () => void }) {
	const [text, setText] = useState('')
	const [read, setRead] = useState<
		{ itemId?: string | undefined; address: string; says: string }[]
	>([])
	const action = useAction()
	const drop = async (file: File | undefined) => {
		if (file) setText(await file.text())
	}
	return (
		<Panel
			title="Delivery reports"
			hint="Paste the whole returned message with its source, or drop the saved file here. A report of delivery is no proof of reading."
		>
			<Trouble says={action.says} />
			<Box
				onDragOver={(event) => event.preventDefault()}
				onDrop={(event) => {
					event.preventDefault()
					void drop(event.dataTransfer.files[0])
				}}
			>
				<Field label="Returned message" value={text} set={setText} rows={8} />
			</Box>
			<Box>
				<Button
					variant="contained"
					disabled={action.busy || !text.trim()}
					onClick={() =>
						action.run(async () => {
							setRead((await call('outbox.readReport', { text })).read)
							setText('')
							took()
							return 'Read.'
						})
					}
				>
					Read report
				</Button>
				{!text.trim() && read.length === 0 && (
					<Typography component="span" variant="body2" color="textSecondary" sx={{ ml: 2 }}>
						Paste or drop a message first.
					</Typography>
				)}
			</Box>
			{read.map((one) => (
				<Alert
					key={`${one.address} ${one.says}`}
					severity={one.itemId ? 'info' : 'warning'}
					role="status"
				>
					{one.says} {one.itemId && <Link href={`#/outbox/item/${one.itemId}`}>Open it</Link>}
				</Alert>
			))}
		</Panel>
	)
}
