/** One model: all that is measured of it, by the schema's own titles, units and limits. */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	FormGroup,
	Stack,
	Typography,
} from '@mui/material'
import { offsetOf } from '../../../shared/engine/visit/shelf.ts'
import { codes, termWords } from '../../../shared/engine/visit/terms.ts'
import { Panel } from '../../parts/panels.tsx'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Entry } from './Entry.tsx'
import { EntryRows } from './EntryRows.tsx'
import { emptySize, groups, sizeFields } from './modelTexts.ts'
import { Studs } from './Studs.tsx'
import { type ModelFormProps, type ModelFormState, useModelForm } from './useModelForm.ts'

/** Errors told at once beside the button. */
const mostTold = 4

export function ModelForm(props: ModelFormProps) {
	const form = useModelForm(props)
	const { texts, put } = form
	return (
		<Stack spacing={2} ref={form.form} onKeyDown={walkByEnter}>
			{groups.map((group) => (
				<Fields key={group.title} form={form} group={group} />
			))}
			<Sizes form={form} />
			<Studs form={form} />
			<FormControlLabel
				label="No longer sold: keep it, but do not match it"
				control={
					<Checkbox
						checked={texts.retired}
						onChange={(event) => put({ retired: event.target.checked })}
					/>
				}
			/>
			<Keep form={form} />
		</Stack>
	)
}

interface OfForm {
	form: ModelFormState
}
function Fields({ form, group }: OfForm & { group: (typeof groups)[number] }) {
	const { texts, read, shown, setField } = form
	const offset = read.model && offsetOf(read.model)
	const told = group.title === 'Measured' && offset !== undefined
	return (
		<Panel title={group.title} hint={told ? `Offset: ${offset} mm` : undefined}>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: { xs: '1fr', sm: '1fr 1fr', lg: '1fr 1fr 1fr' },
					columnGap: 2,
					rowGap: 1,
					alignItems: 'start',
				}}
			>
				{group.fields.map((name) => (
					<Entry
						key={name}
						path={name}
						value={texts.fields[name] ?? ''}
						set={(text) => setField(name, text)}
						error={shown.errors[name]}
						question={shown.questions[name]}
					/>
				))}
			</Box>
			{group.title === 'What it is' && <MadeFor form={form} />}
		</Panel>
	)
}

function MadeFor({ form: { texts, put } }: OfForm) {
	const choose = (code: (typeof codes)[number], on: boolean) =>
		put({ codes: on ? [...texts.codes, code] : texts.codes.filter((other) => other !== code) })
	return (
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
								onChange={(event) => choose(code, event.target.checked)}
							/>
						}
					/>
				))}
			</FormGroup>
		</Box>
	)
}

function Sizes({ form: { texts, tried, read, shown, put } }: OfForm) {
	return (
		<Panel title="Sizes" hint="One line for each size and fitting, as measured inside.">
			{tried && read.errors.sizes && (
				<Alert severity="error" role="alert">
					{read.errors.sizes}
				</Alert>
			)}
			<EntryRows
				what="size"
				prefix="sizes"
				names={sizeFields}
				rows={texts.sizes}
				put={(sizes) => put({ sizes })}
				add={() => emptySize(texts.sizes.at(-1))}
				columns="140px 100px 1fr 1fr 120px 100px"
				shown={shown}
			/>
		</Panel>
	)
}

function Keep({ form: { read, tried, busy, keep, leave } }: OfForm) {
	const errors = Object.values(read.errors)
	return (
		<>
			{tried && errors.length > 0 && (
				<Alert severity="error" role="alert">
					Not saved: {errors.length} {errors.length === 1 ? 'entry needs' : 'entries need'}{' '}
					correcting. {errors.slice(0, mostTold).join(' ')}
				</Alert>
			)}
			<Box sx={{ display: 'flex', gap: 2 }}>
				<Button variant="contained" size="large" disabled={busy} onClick={keep}>
					Save model
				</Button>
				<Button variant="outlined" size="large" onClick={leave}>
					Leave without saving
				</Button>
			</Box>
		</>
	)
}
