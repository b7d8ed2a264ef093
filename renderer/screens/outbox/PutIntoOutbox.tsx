/** One document of a signed visit to one recipient of the record, put into the outbox. */
import { Alert, Box, Button, Stack } from '@mui/material'
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	type Channel,
	channels,
	channelWords,
	isMail,
	kindWords,
	type PageKind,
	pageKinds,
	roleWords,
} from '../../../shared/desk/outbox/item.ts'
import { HostRefusal } from '../../host.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords, today } from '../../parts/dates.ts'
import { Field, Form, Sheet, Trouble } from '../../parts/form.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { AddContact } from './AddContact.tsx'

type Recipients = OutputOf<'outbox.recipients'>
type Choice = Recipients['recipients'][number]
const protections = ['with a password', 'without a password'] as const

const nameOf = ({ recipient: { name, role, email } }: Choice): string =>
	`${name} (${roleWords[role]})${email ? `, ${email}` : ', no e-mail address'}`

/** The choices as they stand on the screen. */
type Entries = Record<'recipient' | 'kind' | 'channel' | 'protection' | 'due' | 'again', string>
const nothingChosen = (): Entries => ({
	recipient: '',
	kind: '',
	channel: '',
	protection: protections[0],
	due: today(),
	again: '',
})

/** What the entries stand for; undefined where nothing of the lists is chosen. */
interface Chosen {
	choice: Choice | undefined
	kind: PageKind | undefined
	channel: Channel | undefined
	/** Whether the copy opens by a password. */
	locked: boolean
}
const chosenBy = (entries: Entries, { recipients }: Recipients): Chosen => ({
	choice: recipients.find((recipient) => nameOf(recipient) === entries.recipient),
	kind: pageKinds.find((kind) => kindWords[kind] === entries.kind),
	channel: channels.find((channel) => channelWords[channel] === entries.channel),
	locked: entries.protection === protections[0],
})

interface PutIntoOutboxProps {
	visitId: string
	mailSet: boolean
}
export function PutIntoOutbox(props: PutIntoOutboxProps) {
	const recipients = useHost('outbox.recipients', { visitId: props.visitId })
	return (
		<>
			<Refused of={recipients} />
			{recipients.value && <PutForm {...props} of={recipients.value} />}
			{recipients.value && <AddContact playerId={recipients.value.playerId} />}
		</>
	)
}

function PutForm({ visitId, mailSet, of }: PutIntoOutboxProps & { of: Recipients }) {
	const [entries, setEntries] = useState(nothingChosen)
	const action = useHostAction()
	/** the same was given to the same person before */
	const [second, setSecond] = useState(false)
	const chosen = chosenBy(entries, of)
	const put = (input: InputOf<'outbox.add'>) =>
		change('outbox.add', input).catch((error: unknown) => {
			setSecond(error instanceof HostRefusal && error.code === 'outbox.second-sending')
			throw error
		})
	const add = async () => {
		const { choice, kind, channel, locked } = chosen
		if (!choice) throw new Error('Recipient is not chosen. Choose one from the record.')
		if (!kind) throw new Error('Document is not chosen. Choose one from the list.')
		if (!channel) throw new Error('Way is not chosen. Choose one from the list.')
		const again = second ? entries.again.trim() : ''
		const { itemId } = await put({
			visitId,
			kind,
			recipientId: choice.recipient.recipientId,
			channel,
			protection: isMail(channel) && locked ? 'password' : 'open',
			due: entries.due,
			...(again && { again }),
		})
		navigate(`/outbox/item/${itemId}`)
		return ''
	}
	return (
		<Form submit={() => action.run(add)}>
			<Stack spacing={2}>
				<Trouble says={action.says} />
				{of.minor && (
					<Alert severity="info">
						The player is a minor: by e-mail the report goes only to a guardian who consented.
					</Alert>
				)}
				<Sheet
					title="Put into the outbox"
					hint={
						`Version ${of.version}, visit of ${dayInWords(of.visitDate)}. One ` +
						'document to one recipient.'
					}
				>
					<Fields
						{...{ entries, chosen, of, mailSet }}
						put={(update) => {
							setSecond(false)
							setEntries(update)
						}}
					/>
				</Sheet>
				<Told chosen={chosen} />
				{second && (
					<Field
						label="Why it is sent once more"
						value={entries.again}
						set={(again) => setEntries((now) => ({ ...now, again }))}
						focus
					/>
				)}
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Put into the outbox
					</Button>
				</Box>
			</Stack>
		</Form>
	)
}

interface FieldsProps {
	entries: Entries
	chosen: Chosen
	of: Recipients
	mailSet: boolean
	put: (update: (now: Entries) => Entries) => void
}
function Fields({ entries, chosen: { choice, channel, locked }, of, mailSet, put }: FieldsProps) {
	const set = (name: keyof Entries) => (text: string) => put((now) => ({ ...now, [name]: text }))
	const ways = channels.filter((way) => mailSet || way !== 'smtp')
	return (
		<>
			<Field
				label="Recipient"
				value={entries.recipient}
				// what one recipient may be given another may not
				set={(recipient) => put((now) => ({ ...now, recipient, kind: '' }))}
				options={of.recipients.map(nameOf)}
				hint="Only people on the record. Add another one below."
			/>
			<Field
				label="Document"
				value={entries.kind}
				set={set('kind')}
				options={(choice?.kinds ?? []).map((kind) => kindWords[kind])}
				hint={
					choice
						? `What a ${roleWords[choice.recipient.role]} may be given.`
						: 'Choose the recipient first.'
				}
			/>
			<Field
				label="Way"
				value={entries.channel}
				set={set('channel')}
				options={ways.map((way) => channelWords[way])}
				{...(mailSet ? {} : { hint: 'E-mail from here is left out: no mail server is set.' })}
			/>
			{channel && isMail(channel) && (
				<Field
					label="Copy"
					value={entries.protection}
					set={set('protection')}
					options={protections}
					hint={
						locked
							? 'You give the password by telephone or in person.'
							: 'Anyone who gets the message can read it. Agree it with the recipient first.'
					}
				/>
			)}
			<Field label="Due" type="date" value={entries.due} set={set('due')} />
		</>
	)
}

/** What is known of the recipient chosen; consent to e-mail is left out on other ways. */
function Told({ chosen: { choice, channel } }: { chosen: Chosen }) {
	if (!choice) return null
	const byMail = !channel || isMail(channel)
	return (
		<>
			{choice.warnings.map((text) => (
				<Alert key={text} severity="warning">
					{text}
				</Alert>
			))}
			{choice.consents
				.filter(({ purpose }) => byMail || purpose !== 'email')
				.map(({ says }) => (
					<Alert key={says} severity="info">
						{says}
					</Alert>
				))}
		</>
	)
}
