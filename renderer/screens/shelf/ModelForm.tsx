/** One model: all that is measured of it, by the schema's own titles, units and limits. */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	FormGroup,
	Link,
	Paper,
	Stack,
	TextField,
	Typography,
} from '@mui/material'
import { type ReactNode, useEffect, useMemo, useRef, useState } from 'react'
import type { SizingResult } from '../../../shared/engine/findings/assessment.ts'
import { soleFigure } from '../../../shared/engine/footwear/sole-figure.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { modelSchema, offsetOf, type Shelf } from '../../../shared/engine/visit/shelf.ts'
import { codes, termWords } from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { Picture } from '../../parts/Picture.tsx'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import type { SaveShelf } from './shelf.tsx'
import {
	emptySize,
	emptyStud,
	groups,
	type ModelTexts,
	type Row,
	readTexts,
	type StudState,
	sizeFields,
	studFields,
	unsaved,
} from './texts.ts'

/** No player stands on the sole of the form. */
const nobody: SizingResult = {
	left: { fitting: {} },
	right: { fitting: {} },
	changes: { left: {}, right: {} },
	findings: [],
	workings: [],
}
const studStates: readonly StudState[] = ['not recorded', 'none', 'listed']
const unitless = ['fraction', 'label', 'local currency']

interface EntryProps {
	path: string
	value: string
	set: (text: string) => void
	error?: string | undefined
	question?: string | undefined
	/** in a table: the column says the title, this the row */
	rowName?: string
	placeholder?: string
}
/** One entry, its kind by the schema. */
function Entry({ path, value, set, error, question, rowName, placeholder }: EntryProps) {
	const meta = fieldMeta(modelSchema, path)
	const unit = unitless.includes(meta.unit) ? '' : meta.unit
	const name = rowName ? `${meta.title}, ${rowName}` : undefined
	const options =
		meta.kind === 'yesNo' ? ['yes', 'no'] : meta.kind === 'choice' ? meta.options : undefined
	return (
		<TextField
			fullWidth
			size="small"
			value={value}
			error={Boolean(error)}
			helperText={error ?? question ?? (rowName ? undefined : ' ')}
			select={Boolean(options)}
			placeholder={placeholder}
			label={rowName ? undefined : `${meta.title}${unit ? ` (${unit})` : ''}`}
			onChange={(event) => set(event.target.value)}
			slotProps={{
				inputLabel: { shrink: true },
				select: { native: true },
				htmlInput: {
					'aria-label': name,
					autoComplete: 'off',
					spellCheck: false,
					inputMode: meta.kind === 'number' && !path.startsWith('studs') ? 'decimal' : undefined,
				},
				formHelperText: {
					role: error || question ? 'alert' : undefined,
					sx: question && !error ? { color: 'warning.main' } : {},
				},
			}}
		>
			{options && [
				...(path.endsWith('removable')
					? []
					: [
							<option key="" value="">
								{path === 'sole' || path.includes('.') ? 'Choose' : 'Not recorded'}
							</option>,
						]),
				...options.map((one) => (
					<option key={one} value={one}>
						{termWords(one)}
					</option>
				)),
			]}
		</TextField>
	)
}
function Group({ title, hint, children }: { title: string; hint?: string; children: ReactNode }) {
	return (
		<Paper component="section" variant="outlined" sx={{ p: 2, display: 'grid', gap: 1.5 }}>
			<Box>
				<Typography variant="h2">{title}</Typography>
				{hint && (
					<Typography variant="body2" color="text.secondary">
						{hint}
					</Typography>
				)}
			</Box>
			{children}
		</Paper>
	)
}
interface RowsProps {
	what: 'size' | 'stud'
	prefix: 'sizes' | 'studs'
	names: readonly string[]
	rows: readonly Row[]
	put: (rows: Row[]) => void
	add: () => Row
	columns: string
	errors: Record<string, string>
	questions: Record<string, string>
	hints?: Record<string, string>
}
function Rows({
	what,
	prefix,
	names,
	rows,
	put,
	add,
	columns,
	errors,
	questions,
	hints = {},
}: RowsProps) {
	const adding = useRef(false)
	const box = useRef<HTMLDivElement>(null)
	// biome-ignore lint/correctness/useExhaustiveDependencies: a new row is what brings the focus to it
	useEffect(() => {
		if (!adding.current) return
		adding.current = false
		const fields = box.current?.querySelectorAll<HTMLElement>('[data-row]:last-of-type input')
		fields?.[0]?.focus()
	}, [rows.length])
	return (
		<Box ref={box} sx={{ display: 'grid', gap: 1, overflowX: 'auto', pt: 0.5 }}>
			<Box
				aria-hidden="true"
				sx={{
					display: 'grid',
					gridTemplateColumns: columns,
					gap: 1,
					fontSize: '0.85rem',
					fontWeight: 600,
					minWidth: 700,
				}}
			>
				{names.map((name) => {
					const { title, unit } = fieldMeta(modelSchema, `${prefix}.0.${name}`)
					return (
						<span key={name}>
							{title}
							{unit && !unitless.includes(unit) ? ` (${unit})` : ''}
						</span>
					)
				})}
			</Box>
			{rows.map((row, at) => (
				<Box
					key={row.key}
					data-row
					sx={{
						display: 'grid',
						gridTemplateColumns: columns,
						gap: 1,
						alignItems: 'start',
						minWidth: 700,
					}}
				>
					{names.map((name) => {
						const path = `${prefix}.${at}.${name}`
						return (
							<Entry
								key={name}
								path={path}
								rowName={`${what} ${at + 1}`}
								value={row.texts[name] ?? ''}
								error={errors[path]}
								question={questions[path]}
								placeholder={hints[name]}
								set={(text) =>
									put(
										rows.map((one) =>
											one.key === row.key ? { ...one, texts: { ...one.texts, [name]: text } } : one,
										),
									)
								}
							/>
						)
					})}
					<Button
						size="small"
						aria-label={`Remove ${what} ${at + 1}`}
						onClick={() => put(rows.filter((one) => one.key !== row.key))}
					>
						Remove
					</Button>
				</Box>
			))}
			<Button
				sx={{ justifySelf: 'start' }}
				variant="outlined"
				onClick={() => {
					adding.current = true
					put([...rows, add()])
				}}
			>
				Add a {what}
			</Button>
		</Box>
	)
}

interface FormProps {
	/** the page, under which entries not saved are kept */ place: string
	start: ModelTexts
	shelf: Shelf
	save: SaveShelf
}
export function ModelForm({ place, start, shelf, save }: FormProps) {
	const [texts, setTexts] = useState<ModelTexts>(() => unsaved.get(place) ?? start)
	const [tried, setTried] = useState(false)
	const [touched, setTouched] = useState<ReadonlySet<string>>(new Set())
	const [busy, setBusy] = useState(false)
	const form = useRef<HTMLDivElement>(null)
	const read = useMemo(() => readTexts(texts, shelf), [texts, shelf])
	const put = (patch: Partial<ModelTexts>) => {
		const next = { ...texts, ...patch }
		setTexts(next)
		unsaved.set(place, next)
	}
	const setField = (name: string, text: string) => {
		setTouched(new Set([...touched, name]))
		put({ fields: { ...texts.fields, [name]: text } })
	}
	/** An empty field is not blamed before the model is to be saved. */
	const shownErrors = tried
		? read.errors
		: Object.fromEntries(
				Object.entries(read.errors).filter(
					([path, words]) => !/is empty/.test(words) || touched.has(path),
				),
			)
	const isNew = texts.id === undefined
	const offset = read.model && offsetOf(read.model)
	const firstSize = read.model?.sizes[0]
	const figure =
		read.model && firstSize && (read.model.studs?.length ?? 0) > 0
			? soleFigure(read.model, firstSize, nobody, 'right', protocol)
			: undefined
	const leave = () => {
		unsaved.delete(place)
		location.hash = '#/shelf'
	}
	const keep = async () => {
		setTried(true)
		const { model } = read
		if (!model) {
			requestAnimationFrame(() =>
				form.current?.querySelector<HTMLElement>('[aria-invalid=true]')?.focus(),
			)
			return
		}
		setBusy(true)
		try {
			await save(
				{
					...shelf,
					models: isNew
						? [...shelf.models, model]
						: shelf.models.map((one) => (one.id === model.id ? model : one)),
				},
				`${model.name} is saved.`,
			)
			leave()
		} catch {
			/* the words stand above the form */
		} finally {
			setBusy(false)
		}
	}
	const wrong = Object.keys(read.errors).length
	return (
		<Stack spacing={2} ref={form} onKeyDown={walkByEnter}>
			<Typography variant="h1">{isNew ? 'New model' : texts.fields.name || 'Model'}</Typography>
			<Typography color="text.secondary">
				Only name, sole and one measured size are needed. What is left empty is{' '}
				<em>not recorded</em>, never zero; the match says so. Enter goes on, Shift+Enter back. The
				page <Link href="#/shelf/guide">How to measure</Link> shows each measure; what is typed here
				is kept meanwhile.
			</Typography>
			{groups.map(({ title, fields }) => (
				<Group
					key={title}
					title={title}
					{...(title === 'Measured' && offset !== undefined
						? { hint: `Offset: ${offset} mm` }
						: {})}
				>
					<Box
						sx={{
							display: 'grid',
							gridTemplateColumns: { xs: '1fr', sm: '1fr 1fr', lg: '1fr 1fr 1fr' },
							columnGap: 2,
							rowGap: 1,
							alignItems: 'start',
						}}
					>
						{fields.map((name) => (
							<Entry
								key={name}
								path={name}
								value={texts.fields[name] ?? ''}
								set={(text) => setField(name, text)}
								error={shownErrors[name]}
								question={read.questions[name]}
							/>
						))}
					</Box>
					{title === 'What it is' && (
						<Box component="fieldset" sx={{ border: 0, m: 0, p: 0 }}>
							<Typography component="legend" variant="body2" sx={{ fontWeight: 600 }}>
								Made for (none ticked: any code)
							</Typography>
							<FormGroup row>
								{codes.map((code) => (
									<FormControlLabel
										key={code}
										label={termWords(code)}
										control={
											<Checkbox
												checked={texts.codes.includes(code)}
												onChange={(event) =>
													put({
														codes: event.target.checked
															? [...texts.codes, code]
															: texts.codes.filter((one) => one !== code),
													})
												}
											/>
										}
									/>
								))}
							</FormGroup>
						</Box>
					)}
				</Group>
			))}
			<Group title="Sizes" hint="One line for each size and fitting, as measured inside.">
				{tried && read.errors.sizes && (
					<Alert severity="error" role="alert">
						{read.errors.sizes}
					</Alert>
				)}
				<Rows
					what="size"
					prefix="sizes"
					names={sizeFields}
					rows={texts.sizes}
					put={(sizes) => put({ sizes })}
					add={() => emptySize(texts.sizes.at(-1))}
					columns="140px 100px 1fr 1fr 120px 100px"
					errors={shownErrors}
					questions={read.questions}
				/>
			</Group>
			<Group
				title="Studs"
				hint="From heel: 0 at the heel, 1 at the toe, or millimetres such as 182 mm in the first size above. Across: -1 at the inner edge, 0 in the middle, 1 at the outer edge, or millimetres from the middle such as -35 mm."
			>
				<TextField
					select
					size="small"
					label="Studs"
					value={texts.studState}
					sx={{ maxWidth: 260 }}
					slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
					onChange={(event) =>
						put({
							studState: event.target.value as StudState,
							studs:
								event.target.value === 'listed' && texts.studs.length === 0
									? [emptyStud()]
									: texts.studs,
						})
					}
				>
					{studStates.map((studState) => (
						<option key={studState} value={studState}>
							{studState === 'none'
								? 'a sole without studs'
								: studState === 'listed'
									? 'studs, listed below'
									: 'not recorded'}
						</option>
					))}
				</TextField>
				{texts.studState === 'listed' && (
					<Box
						sx={{
							display: 'grid',
							gridTemplateColumns: { xs: '1fr', lg: '1fr auto' },
							gap: 3,
							alignItems: 'start',
						}}
					>
						<Rows
							what="stud"
							prefix="studs"
							names={studFields}
							rows={texts.studs}
							put={(studs) => put({ studs })}
							add={() => emptyStud(texts.studs.at(-1))}
							columns="1fr 1fr 120px 120px 100px 100px"
							errors={shownErrors}
							questions={read.questions}
							hints={{ xFraction: '0.72 or 182 mm', yFraction: '-0.6 or -35 mm' }}
						/>
						{figure && (
							<Picture
								figure={figure}
								caption={`Size ${firstSize?.label}, right sole, from above`}
							/>
						)}
					</Box>
				)}
			</Group>
			<FormControlLabel
				label="No longer sold: keep it, but do not match it"
				control={
					<Checkbox
						checked={texts.retired}
						onChange={(event) => put({ retired: event.target.checked })}
					/>
				}
			/>
			{tried && wrong > 0 && (
				<Alert severity="error" role="alert">
					Not saved: {wrong} {wrong === 1 ? 'entry needs' : 'entries need'} correcting.{' '}
					{Object.values(read.errors).slice(0, 4).join(' ')}
				</Alert>
			)}
			<Box sx={{ display: 'flex', gap: 2 }}>
				<Button variant="contained" size="large" disabled={busy} onClick={() => void keep()}>
					Save model
				</Button>
				<Button variant="outlined" size="large" onClick={leave}>
					Leave without saving
				</Button>
			</Box>
		</Stack>
	)
}
