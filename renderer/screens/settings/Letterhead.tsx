/**
 * The clinic's letterhead, paper, size systems and own sentences, with a sample page that follows
 * each change.
 */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	Collapse,
	FormControlLabel,
	FormGroup,
	Paper,
	Stack,
	TextField,
	Typography,
} from '@mui/material'
import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import { type Clinic, clinicSchema } from '../../../shared/engine/report/clinic.ts'
import { playerReport } from '../../../shared/engine/report/player.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { sizeSystems, termWords } from '../../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { sentences } from '../../../shared/engine/words/en.table.ts'
import { textProblems } from '../../../shared/engine/words/speak.ts'
import { call, wordsOf } from '../../host.ts'
import { clinicProtocol, loadProtocol } from '../../parts/clinicProtocol.ts'
import { DocumentView } from '../../parts/DocumentView.tsx'
import { byField, Field, issueWords, Sheet, Trouble } from '../../parts/form.tsx'
import { contrastWords } from '../setup/contrast.ts'
import { readLogo } from '../setup/logo.ts'

const paths = [
	'name',
	'phone',
	'address',
	'email',
	'colour',
	'clinician.name',
	'clinician.registration',
] as const
const title = (path: string) => fieldMeta(clinicSchema, path).title
/** The systems a document can show; the mondopoint length always stands. */
const systems = sizeSystems.filter((sizeSystem) => sizeSystem !== 'mondopoint')
type Form = Record<(typeof paths)[number], string>
const formOf = (clinic: Clinic): Form => ({
	name: clinic.name,
	phone: clinic.phone ?? '',
	address: clinic.address.join('\n'),
	email: clinic.email ?? '',
	colour: clinic.colour,
	'clinician.name': clinic.clinician.name,
	'clinician.registration': clinic.clinician.registration,
})
/** An invented player of the sample page. */
const sample: Visit = visitSchema.parse({
	format: 'lastwright-visit',
	version: 1,
	player: { givenName: 'Sample', familyName: 'Player', birthDate: '1999-04-02', sex: 'female' },
	visitDate: '2027-01-20',
	play: { code: 'association' },
	feet: {
		left: { heelToToeMm: [246, 247], ballWidthMm: 95 },
		right: { heelToToeMm: 249, ballWidthMm: 97 },
	},
	ankles: { left: { lungeCm: 7 }, right: { lungeCm: 9.5 } },
	screening: { nightPain: false },
})

export function Letterhead() {
	const [held, setHeld] = useState<Clinic>()
	const [form, setForm] = useState<Form>()
	const [more, setMore] = useState<Pick<Clinic, 'logo' | 'paper' | 'sizeSystems' | 'texts'>>({})
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [done, setDone] = useState('')
	useEffect(() => {
		Promise.all([call('clinic.get', {}), loadProtocol()]).then(
			([clinic]) => {
				setHeld(clinic)
				setForm(formOf(clinic))
				const { logo, paper, sizeSystems: shown, texts } = clinic
				setMore({ logo, paper, sizeSystems: shown, texts })
			},
			(error) => setSays(wordsOf(error)),
		)
	}, [])
	const read = useMemo(
		() =>
			form &&
			clinicSchema.safeParse({
				format: 'lastwright-clinic',
				version: 1,
				name: form.name,
				address: form.address
					.split('\n')
					.map((line) => line.trim())
					.filter(Boolean),
				phone: form.phone.trim() || undefined,
				email: form.email.trim() || undefined,
				colour: form.colour,
				clinician: { name: form['clinician.name'], registration: form['clinician.registration'] },
				...Object.fromEntries(Object.entries(more).filter(([, value]) => value !== undefined)),
			}),
		[form, more],
	)
	const clinic = useDeferredValue(read?.success ? read.data : undefined)
	const page = useMemo(() => {
		if (!clinic) return undefined
		try {
			return playerReport({
				visit: sample,
				assessment: assess(sample, [], clinicProtocol.file),
				decisions: noDecisions,
				clinic,
				signedAt: undefined,
				draft: true,
				protocol: clinicProtocol,
			})
		} catch {
			return undefined
		}
	}, [clinic])
	if (!form || !held)
		return says ? (
			<Trouble says={says} />
		) : (
			<Typography role="status">Opening the letterhead.</Typography>
		)
	const put = (path: keyof Form) => (value: string) => {
		setDone('')
		setForm({ ...form, [path]: value })
		setWrong(({ [path]: _, ...rest }) => rest)
	}
	const field = (path: keyof Form, extra: Partial<Parameters<typeof Field>[0]> = {}) => (
		<Field label={title(path)} value={form[path]} set={put(path)} error={wrong[path]} {...extra} />
	)
	const save = async () => {
		setDone('')
		if (!read?.success) {
			const problems: Record<string, string> = {}
			for (const issue of read?.error.issues ?? []) {
				const path = issue.path[0] === 'address' ? 'address' : issue.path.join('.')
				problems[path] ??= path.startsWith('texts')
					? issue.message
					: issueWords(title(path), form[path as keyof Form] ?? '', issue)
			}
			setWrong(problems)
			return setSays(Object.values(problems).join(' '))
		}
		try {
			await call('clinic.save', read.data)
			setHeld(read.data)
			setSays('')
			setDone('Saved. Documents written from now on carry it; signed ones stay as they are.')
		} catch (error) {
			const { fields, says: words } = byField(error, '', paths)
			setWrong(fields)
			setSays(words)
		}
	}
	const shown = more.sizeSystems ?? systems
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', lg: '1.2fr 1fr' },
				gap: 3,
				alignItems: 'start',
			}}
		>
			<Stack
				component="form"
				noValidate
				spacing={2}
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					void save()
				}}
			>
				<Sheet title="Letterhead">
					{field('name')}
					{field('phone', { optional: true })}
					{field('address', { rows: 4, optional: true })}
					<Stack spacing={2}>
						{field('email', { optional: true })}
						{field('colour', { type: 'color', hint: contrastWords(form.colour).says })}
					</Stack>
					{field('clinician.name')}
					{field('clinician.registration')}
					<Box sx={{ gridColumn: '1 / -1' }}>
						<Typography
							component="label"
							htmlFor="letterhead-logo"
							sx={{ display: 'block', fontWeight: 600 }}
						>
							Logo file
						</Typography>
						<Box
							component="input"
							id="letterhead-logo"
							type="file"
							accept="image/png,image/jpeg,image/svg+xml"
							sx={{ font: 'inherit', minHeight: 44 }}
							onChange={(event: React.ChangeEvent<HTMLInputElement>) => {
								const file = event.target.files?.[0]
								if (file)
									readLogo(file).then(
										(logo) => {
											setMore((now) => ({ ...now, logo }))
											setSays('')
										},
										(error: Error) => setSays(error.message),
									)
							}}
						/>
						{more.logo ? (
							<Button onClick={() => setMore((now) => ({ ...now, logo: undefined }))}>
								Remove the logo
							</Button>
						) : null}
					</Box>
				</Sheet>
				<Sheet title="Paper and sizes">
					<TextField
						select
						label="Paper"
						value={more.paper ?? 'A4'}
						onChange={(event) =>
							setMore((now) => ({ ...now, paper: event.target.value as 'A4' | 'Letter' }))
						}
						slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
					>
						<option value="A4">A4</option>
						<option value="Letter">Letter</option>
					</TextField>
					<FormGroup role="group" aria-label="Size systems shown">
						<Typography sx={{ fontWeight: 600 }}>Size systems shown</Typography>
						{systems.map((one) => (
							<FormControlLabel
								key={one}
								label={termWords(one)}
								control={
									<Checkbox
										checked={shown.includes(one)}
										disabled={shown.length === 1 && shown.includes(one)}
										onChange={(_, on) =>
											setMore((now) => ({
												...now,
												sizeSystems: systems.filter((system) =>
													system === one ? on : shown.includes(system),
												),
											}))
										}
									/>
								}
							/>
						))}
					</FormGroup>
				</Sheet>
				<Sentences
					own={more.texts ?? {}}
					set={(texts) =>
						setMore((now) => ({ ...now, texts: Object.keys(texts).length > 0 ? texts : undefined }))
					}
				/>
				<Trouble says={says} />
				{done && (
					<Alert severity="success" role="status">
						{done}
					</Alert>
				)}
				<Box>
					<Button type="submit" variant="contained" size="large">
						Save letterhead
					</Button>
				</Box>
			</Stack>
			<Box
				component="section"
				aria-label="Sample page"
				tabIndex={0}
				sx={{
					position: { lg: 'sticky' },
					top: 8,
					maxHeight: { lg: 'calc(100vh - 16px)' },
					overflow: 'auto',
				}}
			>
				<Typography variant="h2" sx={{ mb: 1 }}>
					Sample page, {more.paper ?? 'A4'}
				</Typography>
				{page ? (
					<DocumentView document={page} />
				) : (
					<Typography role="status">The sample follows as soon as the fields can stand.</Typography>
				)}
			</Box>
		</Box>
	)
}
function Sentences({
	own,
	set,
}: {
	own: Readonly<Record<string, string>>
	set: (texts: Record<string, string>) => void
}) {
	const [open, setOpen] = useState(false)
	const [find, setFind] = useState('')
	const found = Object.entries(sentences)
		.filter(([key, words]) =>
			find.trim().length < 2
				? key in own
				: `${key} ${words} ${own[key] ?? ''}`.toLowerCase().includes(find.trim().toLowerCase()),
		)
		.slice(0, 30)
	return (
		<Paper component="section" variant="outlined" sx={{ p: 2 }}>
			<Button aria-expanded={open} onClick={() => setOpen(!open)}>
				Your own sentences ({Object.keys(own).length} set)
			</Button>
			<Collapse in={open} unmountOnExit>
				<Stack spacing={2} sx={{ mt: 1 }}>
					<Field
						label="Find a sentence"
						value={find}
						set={setFind}
						optional
						hint="Two letters or more. Words in braces are filled in and must stay."
					/>
					{found.map(([key, words]) => {
						const problems = key in own ? textProblems({ [key]: own[key] ?? '' }) : []
						return (
							<Box key={key}>
								<TextField
									fullWidth
									multiline
									label={key}
									value={own[key] ?? words}
									error={problems.length > 0}
									helperText={problems[0] ?? (key in own ? `Shipped: ${words}` : '')}
									onChange={(event) => set({ ...own, [key]: event.target.value })}
									slotProps={{ inputLabel: { shrink: true } }}
								/>
								{key in own ? (
									<Button
										size="small"
										onClick={() => {
											const { [key]: _, ...rest } = own
											set(rest)
										}}
									>
										Restore the shipped sentence
									</Button>
								) : null}
							</Box>
						)
					})}
				</Stack>
			</Collapse>
		</Paper>
	)
}
