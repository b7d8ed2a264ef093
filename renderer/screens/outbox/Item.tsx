/**
 * One item: its first page beside the recipient's name and the player's birth date, and what can be
 * done next.
 */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Link,
	Stack,
	Typography,
} from '@mui/material'
import { type ReactNode, useEffect, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { channelWords, kindWords, roleWords, stateWords } from '../../../shared/desk/outbox/item.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { saveBytes, urlOf } from '../../parts/files.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel, Rows, timeWords, useAction, useAnswer } from '../../parts/panels.tsx'
import { StateChip } from './StateChip.tsx'

const lookEveryMs = 3000
function Fact({ name, children, large }: { name: string; children: ReactNode; large?: boolean }) {
	return (
		<Box>
			<Typography component="dt" variant="body2" color="textSecondary">
				{name}
			</Typography>
			<Typography
				component="dd"
				sx={{
					m: 0,
					fontWeight: large ? 700 : 400,
					fontSize: large ? '1.35rem' : '1rem',
					overflowWrap: 'anywhere',
				}}
			>
				{children}
			</Typography>
		</Box>
	)
}
export function Item({ itemId, personId }: { itemId: string; personId: string | undefined }) {
	const { value, says, again } = useAnswer('outbox.list', {})
	const [look, setLook] = useState<OutputOf<'outbox.look'>>()
	const [url, setUrl] = useState('')
	const [trouble, setTrouble] = useState('')
	const one = value?.items.find((item) => item.itemId === itemId)
	const stamp = one?.history.length
	// asked anew with every change: consents and warnings are those of now
	// biome-ignore lint/correctness/useExhaustiveDependencies: the number of happenings is the event
	useEffect(() => {
		call('outbox.look', { itemId }).then(setLook, (error) => setTrouble(wordsOf(error)))
	}, [itemId, stamp])
	const base64 = look?.base64
	useEffect(() => {
		if (!base64) return
		const made = urlOf(base64)
		setUrl(made)
		return () => URL.revokeObjectURL(made)
	}, [base64])
	useEffect(() => {
		const timer = setInterval(again, lookEveryMs)
		return () => clearInterval(timer)
	}, [again])
	if (value && !one)
		return (
			<Alert severity="warning" role="alert">
				This is not in the outbox any more.
			</Alert>
		)
	if (!one) return <Trouble says={says} />
	return (
		<Stack spacing={2}>
			<Trouble says={says || trouble} />
			<Box
				sx={{
					display: 'grid',
					gap: 2,
					gridTemplateColumns: { xs: '1fr', md: 'minmax(0, 3fr) minmax(320px, 2fr)' },
					alignItems: 'start',
				}}
			>
				<Panel
					title={`First page of ${one.number}`}
					hint={
						`${kindWords[one.kind]}, version ${one.version}, visit of ` +
						`${dayInWords(one.visitDate)}. These are the stored bytes.`
					}
				>
					{url && (
						<Box
							component="iframe"
							key={url}
							title={`First page of ${one.number}`}
							src={`${url}#page=1&toolbar=0&navpanes=0&view=FitH`}
							sx={{
								display: 'block',
								width: '100%',
								height: { xs: '60vh', md: '78vh' },
								border: 0,
								bgcolor: '#fff',
							}}
						/>
					)}
				</Panel>
				<Stack spacing={2}>
					<Panel title="Recipient and player">
						<Box component="dl" sx={{ display: 'grid', gap: 1.5, m: 0 }}>
							<Fact name="Recipient" large>
								{one.recipient.name}
							</Fact>
							<Fact name="As">
								{roleWords[one.recipient.role]}
								{one.recipient.email && (one.channel === 'smtp' || one.channel === 'eml')
									? `, ${one.recipient.email}`
									: ''}
							</Fact>
							<Fact name="Player" large>
								{one.playerName}
							</Fact>
							<Fact name="Birth date" large>
								{dayInWords(one.birthDate)}
							</Fact>
							<Fact name="Way">
								{channelWords[one.channel]}
								{one.protection === 'password'
									? ', copy opens by a password'
									: one.channel === 'smtp' || one.channel === 'eml'
										? ', copy opens without a password'
										: ''}
							</Fact>
							<Fact name="State">
								<StateChip one={one} />
							</Fact>
							<Fact name="Owner, due">
								{one.owner.name}, {dayInWords(one.due)}
								{one.overdue ? ' (overdue)' : ''}
							</Fact>
						</Box>
						{one.newerVersion && (
							<Alert severity="warning" role="status">
								Version {one.newerVersion} of this visit is newer than the one here.
							</Alert>
						)}
						{look?.blocked && (
							<Alert severity="error" role="alert">
								{look.blocked}
							</Alert>
						)}
						{look?.missing.map((text) => (
							<Alert key={text} severity="error">
								{text}
							</Alert>
						))}
						{look?.consents.map((text) => (
							<Alert key={text} severity="info">
								{text}
							</Alert>
						))}
						{look?.warnings.map((text) => (
							<Alert key={text} severity="warning">
								{text}
							</Alert>
						))}
					</Panel>
					<Next
						key={one.state}
						one={one}
						look={look}
						mine={one.owner.personId === personId}
						again={again}
					/>
				</Stack>
			</Box>
			<Panel title="What happened">
				<Rows
					label="What happened"
					heads={['When', 'Who', 'State', 'What']}
					empty="Nothing yet."
					rows={one.history.map((happening, index) => ({
						key: String(index),
						cells: [
							timeWords(happening.at),
							happening.by,
							stateWords[happening.state],
							happening.says,
						],
					}))}
				/>
			</Panel>
		</Stack>
	)
}
function Next({
	one,
	look,
	mine,
	again,
}: {
	one: OutboxView
	look: OutputOf<'outbox.look'> | undefined
	mine: boolean
	again: () => void
}) {
	const [compared, setCompared] = useState(false)
	const [read, setRead] = useState(false)
	const [note, setNote] = useState('')
	const [password, setPassword] = useState<OutputOf<'outbox.password'>>()
	const action = useAction()
	const { itemId } = one
	const act = (work: () => Promise<unknown>, says: string) => () =>
		action.run(async () => {
			await work()
			setNote('')
			again()
			return says
		})
	const button = (
		label: string,
		work: () => Promise<unknown>,
		says: string,
		variant: 'contained' | 'outlined' = 'outlined',
		disabled = false,
	) => (
		<Button
			key={label}
			variant={variant}
			disabled={action.busy || one.sending || disabled}
			onClick={act(work, says)}
		>
			{label}
		</Button>
	)
	const confirm = (what: 'sent' | 'delivered' | 'returned' | 'again') => () =>
		call('outbox.confirm', { itemId, what, note })
	const resend = (version: 'same' | 'newest') => async () => {
		location.hash = `#/outbox/item/${(await call('outbox.resend', { itemId, version, reason: note })).itemId}`
	}
	const left = one.sentAt !== undefined || one.taken !== undefined || one.state === 'uncertain'
	const giveOut =
		one.channel === 'eml'
			? 'Save draft for the mail program'
			: one.channel === 'print'
				? 'Save for printing'
				: 'Save for handing over'
	const ticked =
		one.channel === 'eml'
			? 'It was sent'
			: one.channel === 'print'
				? 'It was posted'
				: 'It was handed over'
	const resendable = ['sent', 'delivered', 'returned', 'closed'].includes(one.state)
	const needsNote = note.trim().length < 3
	const noteFor = [
		one.state === 'ready' ? 'Call back' : '',
		resendable && one.newerVersion ? `Send version ${one.newerVersion}` : '',
		resendable && !one.newerVersion ? 'Send again' : '',
		left && !one.breachId ? 'Sent in error' : '',
	].filter(Boolean)
	return (
		<Panel title="Next">
			<Trouble says={action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			{one.breachId && (
				<Alert severity="error">
					Marked as sent in error.{' '}
					<Link href="#/outbox/errors" color="inherit" sx={{ fontWeight: 600 }}>
						Go on with the steps
					</Link>
				</Alert>
			)}
			{one.state === 'to-check' && (
				<Stack spacing={1} sx={{ alignItems: 'flex-start' }}>
					<FormControlLabel
						control={
							<Checkbox
								checked={compared}
								onChange={(event) => setCompared(event.target.checked)}
							/>
						}
						label="Name and birth date on the first page are this player's, and the recipient is right"
					/>
					{Boolean(look?.warnings.length) && (
						<FormControlLabel
							control={
								<Checkbox checked={read} onChange={(event) => setRead(event.target.checked)} />
							}
							label="I read the warnings above and checked what they say"
						/>
					)}
					{button(
						'Release',
						() => {
							if (!compared)
								throw new Error(
									'Tick first that page, name, birth date and recipient were compared.',
								)
							if (look?.warnings.length && !read)
								throw new Error('Tick first that the warnings were read and checked.')
							return call('outbox.release', {
								itemId,
								sha256: look?.sha256 ?? '',
								compared: true,
								warningsRead: read,
							})
						},
						'Released.',
						'contained',
						!look,
					)}
					{!look && (
						<Typography variant="body2" color="textSecondary">
							The first page is being opened.
						</Typography>
					)}
				</Stack>
			)}
			{one.protection === 'password' && one.state !== 'closed' && (
				<Stack spacing={1} sx={{ alignItems: 'flex-start' }}>
					<Button
						variant="outlined"
						disabled={action.busy}
						onClick={() =>
							action.run(async () => {
								setPassword(await call('outbox.password', { itemId }))
								return ''
							})
						}
					>
						Show the password
					</Button>
					{password && (
						<Alert severity="info" role="status">
							Password for {password.recipient}:{' '}
							<Box component="strong" sx={{ fontFamily: 'monospace', fontSize: '1.2rem' }}>
								{password.password}
							</Box>
							. Give it{' '}
							{password.phone
								? `by telephone (${password.phone}) or in person`
								: 'by telephone or in person'}
							, never by e-mail.
						</Alert>
					)}
				</Stack>
			)}
			<Field
				label="Note or reason"
				value={note}
				set={setNote}
				optional
				rows={2}
				hint={
					noteFor.length > 0
						? `Write a few words before: ${noteFor.join(', ')}.`
						: 'Kept with what you do next.'
				}
			/>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				{one.state === 'ready' &&
					one.channel !== 'smtp' &&
					button(
						giveOut,
						async () => {
							const { base64, fileName, mediaType } = await call('outbox.take', { itemId })
							saveBytes(base64, fileName, mediaType)
						},
						one.channel === 'eml'
							? 'Saved. Open it, send it, then tick it here: a draft is no proof of sending.'
							: 'Saved. Tick it here once it has left.',
						'contained',
					)}
				{one.state === 'ready' &&
					one.taken &&
					button(ticked, confirm('sent'), 'Noted.', 'contained')}
				{one.state === 'ready' &&
					button(
						'Call back',
						() => call('outbox.back', { itemId, reason: note }),
						'Called back.',
						'outlined',
						needsNote,
					)}
				{one.state === 'uncertain' && [
					button('It arrived', confirm('delivered'), 'Noted.', 'contained'),
					button('It left, arrival not known', confirm('sent'), 'Noted.'),
					button(
						'It did not arrive: check and send again',
						confirm('again'),
						'Back to check. It may arrive twice.',
					),
				]}
				{one.state === 'sent' && button('It arrived', confirm('delivered'), 'Noted.', 'contained')}
				{(one.state === 'sent' || one.state === 'delivered') &&
					button('It came back', confirm('returned'), 'Noted.')}
				{(one.released || one.sentAt) &&
					button(
						'Transmission sheet',
						async () => {
							const { base64, fileName } = await call('outbox.sheet', { itemId })
							saveBytes(base64, fileName, 'application/pdf')
						},
						'The sheet is saved. Print it: it goes on top of the pages, or into the file.',
					)}
				{resendable &&
					one.newerVersion &&
					button(
						`Send version ${one.newerVersion}`,
						resend('newest'),
						'Prepared.',
						'contained',
						needsNote,
					)}
				{resendable &&
					button(
						one.newerVersion ? `Send version ${one.version} again all the same` : 'Send again',
						resend('same'),
						'Prepared.',
						'outlined',
						needsNote,
					)}
				{!mine &&
					button(
						'Take over',
						() => call('outbox.mine', { itemId, due: one.due }),
						'It is yours now.',
					)}
				{one.state !== 'closed' &&
					button('Close', () => call('outbox.close', { itemId, note }), 'Closed.')}
				{left && !one.breachId && (
					<Button
						variant="outlined"
						color="error"
						disabled={action.busy || needsNote}
						onClick={() =>
							action.run(async () => {
								await call('outbox.sentInError', {
									itemId,
									what: note,
									noticedAt: new Date().toISOString(),
								})
								location.hash = '#/outbox/errors'
								return ''
							})
						}
					>
						Sent in error
					</Button>
				)}
			</Box>
		</Panel>
	)
}
