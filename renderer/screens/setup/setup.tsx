/** First start: letterhead, clinician, passphrase; then the recovery key to keep on paper. */
import { Box, Button, FormHelperText, Stack, Typography } from '@mui/material'
import { useRef, useState } from 'react'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { type Clinic, clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { call } from '../../host.ts'
import { byField, Field, issueWords, Sheet, Trouble } from '../../parts/form.tsx'
import { contrastWords } from './contrast.ts'
import { readLogo } from './logo.ts'
import { RecoveryKey } from './RecoveryKey.tsx'

const paths = [
	'name',
	'address',
	'phone',
	'email',
	'colour',
	'clinician.name',
	'clinician.registration',
] as const
const mostLines = 4
const title = (path: string) => fieldMeta(clinicSchema, path).title

export function Setup({ done }: { done: () => void }) {
	const [form, setForm] = useState<Record<string, string>>({ colour: '#1f5f5b' })
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [logo, setLogo] = useState<Clinic['logo']>()
	const [busy, setBusy] = useState(false)
	const [key, setKey] = useState('')
	const file = useRef<HTMLInputElement>(null)
	const of = (name: string) => form[name]?.trim() ?? ''
	const put = (name: string) => (value: string) => {
		setForm((now) => ({ ...now, [name]: value }))
		setWrong(({ [name]: _, ...rest }) => rest)
	}
	const field = (path: string, more: Partial<Parameters<typeof Field>[0]> = {}) => (
		<Field
			label={title(path)}
			value={form[path] ?? ''}
			set={put(path)}
			error={wrong[path]}
			{...more}
		/>
	)

	const check = (): { clinic?: Clinic; problems: Record<string, string> } => {
		const address = of('address')
			.split('\n')
			.map((line) => line.trim())
			.filter(Boolean)
		const read = clinicSchema.safeParse({
			format: 'lastwright-clinic',
			version: 1,
			name: of('name'),
			address,
			phone: of('phone') || undefined,
			email: of('email') || undefined,
			colour: of('colour'),
			logo,
			clinician: { name: of('clinician.name'), registration: of('clinician.registration') },
		})
		const problems: Record<string, string> = {}
		for (const issue of read.error?.issues ?? []) {
			const path = issue.path[0] === 'address' ? 'address' : issue.path.join('.')
			problems[path] ??=
				path === 'address' && address.length
					? 'Address has a line of more than 120 characters. Shorten that line.'
					: issueWords(title(path), of(path), issue)
		}
		if (address.length > mostLines)
			problems.address = `Address has ${address.length} lines. Write it in ${mostLines} lines or fewer.`
		const passphrase = form.passphrase ?? ''
		if (passphrase.length < leastPassphrase)
			problems.passphrase =
				`Passphrase has ${passphrase.length} characters. Choose one of ` +
				`${leastPassphrase} or more.`
		else if (passphrase !== (form.again ?? ''))
			problems.again = 'Passphrase again differs from the passphrase. Type the same one twice.'
		return { clinic: read.data, problems }
	}
	const go = async () => {
		const { clinic, problems } = check()
		setWrong((now) => ({ ...(now.logo ? { logo: now.logo } : {}), ...problems }))
		setSays(Object.values(problems).join(' '))
		if (!clinic || Object.keys(problems).length) return
		setBusy(true)
		try {
			setKey(
				(await call('session.setUp', { clinic, passphrase: form.passphrase ?? '' })).recoveryKey,
			)
		} catch (error) {
			const { fields, says: words } = byField(error, 'clinic', [...paths, 'passphrase'])
			setWrong(fields)
			setSays([words, ...Object.values(fields)].join(' '))
		} finally {
			setBusy(false)
		}
	}
	const chooseLogo = async (chosen?: File) => {
		setLogo(undefined)
		setWrong(({ logo: _, ...rest }) => rest)
		if (!chosen) return
		try {
			setLogo(await readLogo(chosen))
		} catch (error) {
			setWrong((now) => ({ ...now, logo: (error as Error).message }))
			if (file.current) file.current.value = ''
		}
	}
	if (key) return <RecoveryKey recoveryKey={key} clinicName={of('name')} done={done} />
	return (
		<Stack
			component="form"
			noValidate
			spacing={3}
			sx={{ maxWidth: 860, mx: 'auto' }}
			onSubmit={(event) => {
				event.preventDefault()
				void go()
			}}
		>
			<Box>
				<Typography variant="h1">Set up the clinic</Typography>
				<Typography color="textSecondary" sx={{ mt: 0.5 }}>
					Once, on this PC. Everything stays on it, sealed with your passphrase.
				</Typography>
			</Box>
			<Sheet title="Letterhead" hint="Stands at the head of every report.">
				{field('name', { focus: true, autoComplete: 'organization' })}
				{field('phone', { optional: true, type: 'tel', hint: 'May be left empty.' })}
				{field('address', {
					optional: true,
					rows: mostLines,
					hint: `Up to ${mostLines} lines. May be left empty.`,
				})}
				<Stack spacing={2.5}>
					{field('email', { optional: true, type: 'email', hint: 'May be left empty.' })}
					{field('colour', { type: 'color', hint: contrastWords(of('colour')).says })}
				</Stack>
				<Box
					sx={{
						gridColumn: '1 / -1',
						display: 'flex',
						flexWrap: 'wrap',
						alignItems: 'center',
						gap: 2,
					}}
				>
					<Box>
						<Typography
							component="label"
							htmlFor="logo-file"
							sx={{ display: 'block', fontWeight: 600, mb: 0.5 }}
						>
							Logo file
						</Typography>
						<Box
							component="input"
							ref={file}
							id="logo-file"
							type="file"
							accept="image/png,image/jpeg,image/svg+xml"
							aria-describedby="logo-hint"
							aria-invalid={Boolean(wrong.logo)}
							onChange={(event: React.ChangeEvent<HTMLInputElement>) =>
								void chooseLogo(event.target.files?.[0])
							}
							sx={{
								font: 'inherit',
								minHeight: 44,
								'&::file-selector-button': {
									font: 'inherit',
									fontWeight: 600,
									minHeight: 44,
									px: 2,
									mr: 2,
									border: '1px solid',
									borderColor: 'primary.main',
									borderRadius: 1,
									bgcolor: 'transparent',
									color: 'primary.main',
									cursor: 'pointer',
								},
							}}
						/>
						<FormHelperText
							id="logo-hint"
							role={wrong.logo ? 'alert' : undefined}
							error={Boolean(wrong.logo)}
						>
							{wrong.logo ?? 'PNG, JPEG or SVG, under 500 kB. May be left out.'}
						</FormHelperText>
					</Box>
					{logo && (
						<Box
							component="img"
							alt="The chosen logo"
							src={`data:${logo.mediaType};base64,${logo.base64}`}
							sx={{
								maxHeight: 72,
								maxWidth: 220,
								bgcolor: '#fff',
								p: 1,
								border: 1,
								borderColor: 'divider',
								borderRadius: 1,
							}}
						/>
					)}
				</Box>
			</Sheet>
			<Sheet title="Signing clinician" hint="Stands under every signed report.">
				{field('clinician.name')}
				{field('clinician.registration')}
			</Sheet>
			<Sheet
				title="Opening the records"
				hint="Several plain words are easier to keep in mind and harder to guess than one odd word."
			>
				<Field
					label="Passphrase"
					type="password"
					autoComplete="new-password"
					value={form.passphrase ?? ''}
					set={put('passphrase')}
					error={wrong.passphrase}
					hint={`${leastPassphrase} characters or more.`}
				/>
				<Field
					label="Passphrase again"
					type="password"
					autoComplete="new-password"
					value={form.again ?? ''}
					set={put('again')}
					error={wrong.again}
				/>
			</Sheet>
			<Trouble says={says} />
			<Box>
				<Button type="submit" variant="contained" size="large" disabled={busy}>
					Set up
				</Button>
				{busy && (
					<Typography component="span" role="status" color="textSecondary" sx={{ ml: 2 }}>
						Sealing the records.
					</Typography>
				)}
			</Box>
		</Stack>
	)
}
