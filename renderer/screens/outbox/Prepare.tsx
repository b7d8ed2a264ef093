/** Choosing a player, a signed visit, a document and a recipient from the record. */
import { Alert, Box, Button, Link, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import {
	channels,
	channelWords,
	isMail,
	kindWords,
	type OutboxKind,
	recipientRoles,
	roleWords,
} from '../../../shared/desk/outbox/item.ts'
import { purposes } from '../../../shared/desk/records/consent.ts'
import { call } from '../../host.ts'
import { dayInWords, dayOfMoment, today } from '../../parts/dates.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { Panel, Rows, useAction, useAnswer, Way } from '../../parts/panels.tsx'

const mostShown = 12
export function Prepare({ playerId, mailSet }: { playerId: string | undefined; mailSet: boolean }) {
	return playerId ? <OfPlayer playerId={playerId} mailSet={mailSet} /> : <Find />
}
function Find() {
	const [query, setQuery] = useState('')
	const { value, says } = useAnswer('players.search', { query, limit: mostShown })
	return (
		<Panel title="Which player?">
			<Trouble says={says} />
			<Box sx={{ maxWidth: 420 }}>
				<Field label="Search by name or birth date" value={query} set={setQuery} optional focus />
			</Box>
			<Box component="ul" sx={{ listStyle: 'none', m: 0, p: 0 }}>
				{value?.cards.map((card) => (
					<Box component="li" key={card.playerId}>
						<Link
							href={`#/outbox/player/${card.playerId}`}
							sx={{ display: 'inline-flex', alignItems: 'center', minHeight: 44, gap: 1 }}
						>
							{card.givenName} {card.familyName}, born {dayInWords(card.birthDate)}
						</Link>
					</Box>
				))}
			</Box>
			{value && value.total === 0 && (
				<Typography color="textSecondary">
					{query.trim() ? 'Nobody found. Type less of the name.' : 'No player on record yet.'}
				</Typography>
			)}
			{value && value.total > value.cards.length && (
				<Typography color="textSecondary">
					{value.total - value.cards.length} more: type more of the name.
				</Typography>
			)}
		</Panel>
	)
}
function OfPlayer({ playerId, mailSet }: { playerId: string; mailSet: boolean }) {
	const { value, says } = useAnswer('players.open', { playerId })
	const [visitId, setVisitId] = useState('')
	const visits = (value?.visits ?? []).filter((visit) => !visit.inError)
	const name = value ? `${value.player.givenName} ${value.player.familyName}` : ''
	const label = (one: (typeof visits)[number]) =>
		`Visit of ${dayInWords(one.visitDate)}, signed ${dayOfMoment(one.signedAt)}`
	const chosen = visits.find((visit) => visit.visitId === visitId) ?? visits[0]
	return (
		<Stack spacing={2}>
			<Trouble says={says} />
			<Panel
				title={name ? `${name}, born ${dayInWords(value?.player.birthDate ?? '')}` : 'Opening'}
			>
				<Box>
					<Way to="#/outbox/prepare">Another player</Way>
					<Way to={`#/consents/${playerId}`}>Consents of this player</Way>
				</Box>
				{value && visits.length === 0 && (
					<Typography color="textSecondary">
						No visit of this player is signed yet. A document can be prepared once a clinician has
						signed one.
					</Typography>
				)}
				{chosen && (
					<Box sx={{ maxWidth: 520 }}>
						<Field
							label="Visit"
							value={label(chosen)}
							set={(text) =>
								setVisitId(visits.find((visit) => label(visit) === text)?.visitId ?? '')
							}
							options={visits.map(label)}
						/>
					</Box>
				)}
			</Panel>
			<Tell playerId={playerId} />
			{value && <Notes playerId={playerId} />}
			{chosen && <OfVisit key={chosen.visitId} visitId={chosen.visitId} mailSet={mailSet} />}
		</Stack>
	)
}
/** Who holds an earlier version of a visit and was not given the latest. */
function Tell({ playerId }: { playerId: string }) {
	const { value, says } = useAnswer('outbox.tell', { playerId })
	if (!value || value.tell.length === 0) return <Trouble says={says} />
	return (
		<Panel
			title="Who must be told"
			hint="They hold an earlier version of a visit that was amended since. Send each the newer one: open what was sent, or prepare it below."
		>
			<Rows
				label="Who must be told"
				heads={['Recipient', 'Visit', 'Holds', 'Now', 'Given', 'Way']}
				empty=""
				rows={value.tell.map((one) => ({
					key: `${one.visitId} ${one.recipient}`,
					cells: [
						one.recipient,
						dayInWords(one.visitDate),
						`version ${one.version}`,
						`version ${one.latest}`,
						dayOfMoment(one.at),
						handedWords[one.channel] ?? one.channel,
					],
				}))}
			/>
		</Panel>
	)
}
const handedWords: Record<string, string> = {
	print: 'on paper',
	export: 'as a file',
	send: 'by e-mail',
	'by-hand': 'by hand',
}
/** What must be read before anything of this player leaves. */
function Notes({ playerId }: { playerId: string }) {
	const { value, says, again } = useAnswer('outbox.notes', { playerId })
	const [text, setText] = useState('')
	const [removing, setRemoving] = useState<string>()
	const [why, setWhy] = useState('')
	const action = useAction()
	return (
		<Panel
			title="Read before sending"
			hint="Shown before any document of this player leaves: a court order, an address that must not be told, two households."
		>
			<Trouble says={says || action.says} />
			{value?.notes.map((note) => (
				<Alert key={note.noteId} severity="warning" icon={false}>
					<Typography>{note.text}</Typography>
					<Typography variant="body2">
						{note.by}, {dayOfMoment(note.at)}
					</Typography>
					{removing === note.noteId ? (
						<Stack
							direction={{ xs: 'column', sm: 'row' }}
							spacing={1}
							sx={{ alignItems: { sm: 'flex-end' }, mt: 1 }}
						>
							<Box sx={{ minWidth: 280 }}>
								<Field label="Why it holds no more" value={why} set={setWhy} focus />
							</Box>
							<Button
								variant="outlined"
								disabled={action.busy || why.trim().length < 3}
								onClick={() =>
									action.run(async () => {
										await call('outbox.removeNote', { playerId, noteId: note.noteId, reason: why })
										setRemoving(undefined)
										setWhy('')
										again()
										return ''
									})
								}
							>
								Take it off
							</Button>
						</Stack>
					) : (
						<Button onClick={() => setRemoving(note.noteId)}>It holds no more</Button>
					)}
				</Alert>
			))}
			<Box
				component="form"
				noValidate
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, alignItems: 'flex-end' }}
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					action.run(async () => {
						await call('outbox.addNote', { playerId, text })
						setText('')
						again()
						return ''
					})
				}}
			>
				<Box sx={{ flexGrow: 1, maxWidth: 640 }}>
					<Field label="New note" value={text} set={setText} optional />
				</Box>
				<Button type="submit" variant="outlined" disabled={action.busy || text.trim().length < 3}>
					Add the note
				</Button>
				{text.trim().length < 3 && (
					<Typography variant="body2" color="textSecondary" sx={{ alignSelf: 'center' }}>
						Write the note first.
					</Typography>
				)}
			</Box>
		</Panel>
	)
}
type Recipients = OutputOf<'outbox.recipients'>
const protections = ['with a password', 'without a password'] as const
function OfVisit({ visitId, mailSet }: { visitId: string; mailSet: boolean }) {
	const { value, says, again } = useAnswer('outbox.recipients', { visitId })
	const [form, setForm] = useState({
		recipient: '',
		kind: '',
		channel: '',
		protection: protections[0] as string,
		due: today(),
	})
	const action = useAction()
	const put = (name: keyof typeof form) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text, ...(name === 'recipient' ? { kind: '' } : {}) }))
	const label = ({ recipient }: Recipients['recipients'][number]) =>
		`${recipient.name} ` +
		`(${roleWords[recipient.role]})${recipient.email ? `, ${recipient.email}` : ', no e-mail address'}`
	const chosen = value?.recipients.find((recipient) => label(recipient) === form.recipient)
	const channel = channels.find((one) => channelWords[one] === form.channel)
	const kind = (Object.keys(kindWords) as OutboxKind[]).find((key) => kindWords[key] === form.kind)
	const add = async () => {
		if (!chosen) throw new Error('Recipient is not chosen. Choose one from the record.')
		if (!kind) throw new Error('Document is not chosen. Choose one from the list.')
		if (!channel) throw new Error('Way is not chosen. Choose one from the list.')
		const { itemId } = await call('outbox.add', {
			visitId,
			kind,
			recipientId: chosen.recipient.recipientId,
			channel,
			protection: isMail(channel) && form.protection === protections[0] ? 'password' : 'open',
			due: form.due,
		})
		location.hash = `#/outbox/item/${itemId}`
		return ''
	}
	if (!value) return <Trouble says={says} />
	return (
		<>
			<Stack
				component="form"
				noValidate
				spacing={2}
				onSubmit={(event) => {
					event.preventDefault()
					action.run(add)
				}}
			>
				<Trouble says={says || action.says} />
				{value.minor && (
					<Alert severity="info">
						The player is a minor: by e-mail the report goes only to a guardian who consented.
					</Alert>
				)}
				<Sheet
					title="Put into the outbox"
					hint={
						`Version ${value.version}, visit of ${dayInWords(value.visitDate)}. One ` +
						'document to one recipient.'
					}
				>
					<Field
						label="Recipient"
						value={form.recipient}
						set={put('recipient')}
						options={value.recipients.map(label)}
						hint="Only people on the record. Add another one below."
					/>
					<Field
						label="Document"
						value={form.kind}
						set={put('kind')}
						options={(chosen?.kinds ?? []).map((one) => kindWords[one])}
						hint={
							chosen
								? `What a ${roleWords[chosen.recipient.role]} may be given.`
								: 'Choose the recipient first.'
						}
					/>
					<Field
						label="Way"
						value={form.channel}
						set={put('channel')}
						options={channels
							.filter((one) => mailSet || one !== 'smtp')
							.map((one) => channelWords[one])}
						hint={mailSet ? undefined : 'E-mail from here is left out: no mail server is set.'}
					/>
					{channel && isMail(channel) && (
						<Field
							label="Copy"
							value={form.protection}
							set={put('protection')}
							options={protections}
							hint={
								form.protection === protections[0]
									? 'You give the password by telephone or in person.'
									: 'Anyone who gets the message can read it. Agree it with the recipient first.'
							}
						/>
					)}
					<Field label="Due" type="date" value={form.due} set={put('due')} />
				</Sheet>
				{chosen?.warnings.map((text) => (
					<Alert key={text} severity="warning">
						{text}
					</Alert>
				))}
				{chosen?.consents
					.filter((text) => !channel || isMail(channel) || !text.includes(purposes.email.says))
					.map((text) => (
						<Alert key={text} severity="info">
							{text}
						</Alert>
					))}
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Put into the outbox
					</Button>
				</Box>
			</Stack>
			<AddContact playerId={value.playerId} added={again} />
		</>
	)
}
const none = { name: '', role: '', email: '', emailAgain: '', phone: '' }
function AddContact({ playerId, added }: { playerId: string; added: () => void }) {
	const [form, setForm] = useState(none)
	const [warnings, setWarnings] = useState<string[]>([])
	const action = useAction()
	const put = (name: keyof typeof form) => (text: string) => {
		setForm((now) => ({ ...now, [name]: text }))
		setWarnings([])
	}
	const add = async () => {
		const role = recipientRoles.find((recipientRole) => roleWords[recipientRole] === form.role)
		if (!form.name.trim()) throw new Error('Name is empty. Fill it in.')
		if (!role || role === 'player') throw new Error('Role is not chosen. Choose one from the list.')
		const answer = await call('outbox.addContact', {
			playerId,
			name: form.name,
			role,
			email: form.email,
			emailAgain: form.emailAgain,
			...(form.phone.trim() ? { phone: form.phone } : {}),
			warningsRead: warnings.length > 0,
		})
		if (!answer.contactId) {
			setWarnings(answer.warnings)
			return ''
		}
		setForm(none)
		setWarnings([])
		added()
		return 'On the record. Choose it above.'
	}
	return (
		<Stack
			component="form"
			noValidate
			spacing={2}
			onSubmit={(event) => {
				event.preventDefault()
				action.run(add)
			}}
		>
			<Sheet
				title="Add a recipient to the record"
				hint="Type the address twice; pasting it would repeat a slip."
			>
				<Field label="Name of the recipient" value={form.name} set={put('name')} />
				<Field
					label="Role"
					value={form.role}
					set={put('role')}
					options={recipientRoles
						.filter((recipientRole) => recipientRole !== 'player')
						.map((recipientRole) => roleWords[recipientRole])}
				/>
				<Field label="E-mail address" value={form.email} set={put('email')} optional />
				<Box onPaste={(event) => event.preventDefault()}>
					<Field
						label="E-mail address once more"
						value={form.emailAgain}
						set={put('emailAgain')}
						optional
					/>
				</Box>
				<Field
					label="Telephone"
					value={form.phone}
					set={put('phone')}
					optional
					hint="For the password."
				/>
			</Sheet>
			<Trouble says={action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			{warnings.map((text) => (
				<Alert key={text} severity="warning" role="alert">
					{text}
				</Alert>
			))}
			<Box>
				<Button type="submit" variant="outlined" disabled={action.busy}>
					{warnings.length > 0 ? 'The address is right: add it' : 'Add to the record'}
				</Button>
			</Box>
		</Stack>
	)
}
