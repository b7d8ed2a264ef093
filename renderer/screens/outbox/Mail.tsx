/** The mail server, and the clocks that run after a sending in error. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import { plainWords } from '../../../shared/desk/outbox/mail-settings.ts'
import { call } from '../../host.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { Panel, useAction, useAnswer } from '../../parts/panels.tsx'

const securities = {
	tls: 'TLS from the first byte',
	starttls: 'STARTTLS, required',
	none: 'no encryption',
} as const
const usual = {
	host: '',
	port: '465',
	security: securities.tls as string,
	inSoManyWords: '',
	user: '',
	password: '',
	name: '',
	email: '',
	certificate: '',
	days: '30',
	hours: '72',
}
const wholeNumber = (title: string, text: string): number => {
	if (!/^\d+$/.test(text.trim()))
		throw new Error(`${title} "${text}" is not a whole number. Write one such as 30.`)
	return Number(text)
}
export function Mail({ owner }: { owner: boolean }) {
	const { value, says, again } = useAnswer('mail.get', {})
	const [form, setForm] = useState(usual)
	const action = useAction()
	useEffect(() => {
		if (!value) return
		const { smtp, clock } = value
		setForm((now) => ({
			...now,
			days: String(clock.assessWithinDays),
			hours: String(clock.authorityWithinHours),
			password: '',
			...(smtp
				? {
						host: smtp.host,
						port: String(smtp.port),
						security: securities[smtp.security],
						inSoManyWords: smtp.inSoManyWords ?? '',
						user: smtp.user ?? '',
						name: smtp.from.name,
						email: smtp.from.email,
						certificate: smtp.certificate ?? '',
					}
				: {}),
		}))
	}, [value])
	const put = (name: keyof typeof form) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const save = async () => {
		const security = (Object.keys(securities) as (keyof typeof securities)[]).find(
			(key) => securities[key] === form.security,
		)
		if (!security) throw new Error('Security is not chosen. Choose one from the list.')
		const clock = {
			assessWithinDays: wholeNumber('Days to assess', form.days),
			authorityWithinHours: wholeNumber('Hours to the authority', form.hours),
		}
		const smtp =
			form.host.trim() === ''
				? undefined
				: {
						host: form.host,
						port: wholeNumber('Port', form.port),
						security,
						from: { name: form.name, email: form.email },
						...(security === 'none' ? { inSoManyWords: form.inSoManyWords } : {}),
						...(form.user.trim() ? { user: form.user } : {}),
						...(form.password ? { password: form.password } : {}),
						...(form.certificate.trim() ? { certificate: form.certificate } : {}),
					}
		await call('mail.save', { clock, ...(smtp ? { smtp } : {}) })
		again()
		return smtp
			? 'Saved. Send a test message to see whether it works.'
			: 'Saved. Without a server documents go as drafts, on paper or by hand.'
	}
	if (!owner)
		return (
			<Panel title="Mail server" hint="The owner changes these settings.">
				<Trouble says={says} />
				{value && (
					<Typography>
						{value.smtp
							? `E-mail goes out through ${value.smtp.host} ` +
								`(${securities[value.smtp.security]}), from ${value.smtp.from.name}, ` +
								`${value.smtp.from.email}.`
							: 'No mail server is set. Documents go as drafts for the mail program, on paper ' +
								'or by hand.'}
					</Typography>
				)}
				{value && (
					<Typography>
						After a sending in error: {value.clock.assessWithinDays} days to assess,{' '}
						{value.clock.authorityWithinHours} hours to the authority, where the law asks.
					</Typography>
				)}
			</Panel>
		)
	return (
		<Stack
			component="form"
			noValidate
			spacing={2}
			onSubmit={(event) => {
				event.preventDefault()
				action.run(save)
			}}
		>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Sheet
				title="Mail server"
				hint="User and password are kept sealed with the records and are never shown again."
			>
				<Field
					label="Server"
					value={form.host}
					set={put('host')}
					optional
					hint="Such as mail.example.org; empty where none is used."
				/>
				<Field
					label="Port"
					value={form.port}
					set={put('port')}
					hint="465 with TLS, 587 with STARTTLS."
				/>
				<Field
					label="Security"
					value={form.security}
					set={put('security')}
					options={Object.values(securities)}
				/>
				{form.security === securities.none && (
					<Field
						label="In so many words"
						value={form.inSoManyWords}
						set={put('inSoManyWords')}
						hint={
							'Anyone on the way can read the messages and the password. To do it all the ' +
							`same, type: ${plainWords}`
						}
					/>
				)}
				<Field label="User" value={form.user} set={put('user')} optional />
				<Field
					label="Password of the mail server"
					type="password"
					autoComplete="new-password"
					value={form.password}
					set={put('password')}
					optional
					hint={value?.smtp?.hasPassword ? 'One is kept. Leave empty to keep it.' : undefined}
				/>
				<Field label="Sender's name" value={form.name} set={put('name')} />
				<Field label="Sender's address" value={form.email} set={put('email')} />
				<Field
					label="Certificate of the server"
					value={form.certificate}
					set={put('certificate')}
					optional
					rows={3}
					hint="Only for a server with a certificate of its own: its text, beginning with BEGIN CERTIFICATE."
				/>
			</Sheet>
			<Sheet
				title="After a sending in error"
				hint="30 days to assess: Australia, practice standard 1.6. 72 hours to the authority: GDPR Art 33, from memory. Local law decides."
			>
				<Field label="Days to assess" value={form.days} set={put('days')} />
				<Field label="Hours to the authority" value={form.hours} set={put('hours')} />
			</Sheet>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}>
				<Button type="submit" variant="contained" disabled={action.busy}>
					Save mail settings
				</Button>
				<Button
					variant="outlined"
					disabled={action.busy || !value?.smtp}
					onClick={() => action.run(async () => (await call('mail.test', {})).says)}
				>
					Send a test message
				</Button>
				{value && !value.smtp && (
					<Typography variant="body2" color="textSecondary">
						Save a server first; then a test message can be sent.
					</Typography>
				)}
			</Box>
		</Stack>
	)
}
