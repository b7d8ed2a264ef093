/** The mail server, and the clocks that run after a sending in error. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { plainWords } from '../../../shared/desk/outbox/mail-settings.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'
import { entriesOf, type MailEntries, readEntries, securityWords } from './mailForm.ts'

type Settings = OutputOf<'mail.get'>

/** @param owner whether who works here may change them */
export function Mail({ owner }: { owner: boolean }) {
	const settings = useHost('mail.get', {})
	return (
		<Answered of={settings} what="the mail settings">
			{(value) => (owner ? <MailForm settings={value} /> : <MailTold settings={value} />)}
		</Answered>
	)
}

function MailTold({ settings: { smtp, clock } }: { settings: Settings }) {
	return (
		<Panel title="Mail server" hint="The owner changes these settings.">
			<Typography>
				{smtp
					? `E-mail goes out through ${smtp.host} (${securityWords[smtp.security]}), from ` +
						`${smtp.from.name}, ${smtp.from.email}.`
					: 'No mail server is set. Documents go as drafts for the mail program, on paper ' +
						'or by hand.'}
			</Typography>
			<Typography>
				After a sending in error: {clock.assessWithinDays} days to assess,{' '}
				{clock.authorityWithinHours} hours to the authority, where the law asks.
			</Typography>
		</Panel>
	)
}

type Put = (name: keyof MailEntries) => (text: string) => void

function MailForm({ settings }: { settings: Settings }) {
	const [entries, setEntries] = useState(() => entriesOf(settings))
	const [follows, setFollows] = useState(settings)
	const action = useHostAction()
	if (follows !== settings) {
		setFollows(settings)
		setEntries(entriesOf(settings))
	}
	const put: Put = (name) => (text) => setEntries((now) => ({ ...now, [name]: text }))
	const save = async () => {
		const { smtp, clock } = readEntries(entries)
		await change('mail.save', smtp ? { clock, smtp } : { clock })
		setEntries((now) => ({ ...now, password: '' }))
		return smtp
			? 'Saved. Send a test message to see whether it works.'
			: 'Saved. Without a server documents go as drafts, on paper or by hand.'
	}
	return (
		<Form submit={() => action.run(save)}>
			<Stack spacing={2}>
				<Outcome of={action} />
				<Server entries={entries} put={put} kept={settings.smtp?.hasPassword === true} />
				<Sheet
					title="After a sending in error"
					hint={
						'30 days to assess: Australia, practice standard 1.6. 72 hours to the authority: ' +
						'GDPR Art 33, from memory. Local law decides.'
					}
				>
					<Field label="Days to assess" value={entries.days} set={put('days')} />
					<Field label="Hours to the authority" value={entries.hours} set={put('hours')} />
				</Sheet>
				<Acts action={action} set={settings.smtp !== undefined} />
			</Stack>
		</Form>
	)
}

interface ServerProps {
	entries: MailEntries
	put: Put
	/** Whether a password is kept. */
	kept: boolean
}
function Server({ entries, put, kept }: ServerProps) {
	const of = (name: keyof MailEntries) => ({ value: entries[name], set: put(name) })
	return (
		<Sheet
			title="Mail server"
			hint="User and password are kept sealed with the records and are never shown again."
		>
			<Field
				label="Server"
				{...of('host')}
				optional
				hint="Such as mail.example.org; empty where none is used."
			/>
			<Field label="Port" {...of('port')} hint="465 with TLS, 587 with STARTTLS." />
			<Field label="Security" {...of('security')} options={Object.values(securityWords)} />
			{entries.security === securityWords.none && (
				<Field
					label="In so many words"
					{...of('inSoManyWords')}
					hint={
						'Anyone on the way can read the messages and the password. To do it all the ' +
						`same, type: ${plainWords}`
					}
				/>
			)}
			<Field label="User" {...of('user')} optional />
			<Field
				label="Password of the mail server"
				type="password"
				autoComplete="new-password"
				{...of('password')}
				optional
				{...(kept ? { hint: 'One is kept. Leave empty to keep it.' } : {})}
			/>
			<Field label="Sender's name" {...of('name')} />
			<Field label="Sender's address" {...of('email')} />
			<Field
				label="Certificate of the server"
				{...of('certificate')}
				optional
				rows={3}
				hint={
					'Only for a server with a certificate of its own: its text, beginning with ' +
					'BEGIN CERTIFICATE.'
				}
			/>
		</Sheet>
	)
}

/** @param set whether a server is set: only then a test message can be sent */
function Acts({ action, set }: { action: HostAction; set: boolean }) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}>
			<Button type="submit" variant="contained" disabled={action.busy}>
				Save mail settings
			</Button>
			<Button
				variant="outlined"
				disabled={action.busy || !set}
				onClick={() => action.run(async () => (await call('mail.test', {})).says)}
			>
				Send a test message
			</Button>
			{!set && (
				<Typography variant="body2" color="textSecondary">
					Save a server first; then a test message can be sent.
				</Typography>
			)}
		</Box>
	)
}
