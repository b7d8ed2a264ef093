/** One field of the visit, read from its schema: number with repeats, choice, yes/no/not asked, or text. */
import { Box, TextField, ToggleButton, ToggleButtonGroup, Typography } from '@mui/material'
import { useState } from 'react'
import { meanOf, rounded } from '../../shared/visit/sides.ts'
import { termWords } from '../../shared/visit/terms.ts'
import { visitSchema } from '../../shared/visit/visit.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { readPath, withNotMeasured, withRaw, withValue } from '../screens/assessment/path.ts'
import { DateField } from './DateField.tsx'
import { fieldMeta, schemaAt } from './fieldMeta.ts'
import { parseDate } from './parseDate.ts'
import { parseNumber } from './parseNumber.ts'

export interface FieldProps { path: string; draft: DraftContent; change: (update: (now: DraftContent) => DraftContent) => void; before?: unknown }
interface Judged { value?: unknown; error?: string; warning?: string; notMeasured?: true }
/** What a hurried hand types for 'not measured'. */
const skipped = /^(n|nm|not measured)$/i

/** What the typed text means for the field at `path`: a value, an error, perhaps a question. */
export function judge(path: string, text: string): Judged {
	const meta = fieldMeta(visitSchema, path)
	const trimmed = text.trim()
	if (trimmed === '') return { value: undefined }
	if (meta.kind === 'number' && skipped.test(trimmed)) return { notMeasured: true }
	const limits = `${meta.min ?? ''} to ${meta.max ?? ''} ${meta.unit}`.trim()
	if (meta.kind !== 'number') return schemaAt(visitSchema, path).safeParse(trimmed).success ? { value: trimmed } : { error: `"${trimmed}" cannot stand here.` }
	const parsed = parseNumber(text, meta.unit)
	if (!parsed.ok) return { error: parsed.says }
	const outside = parsed.values.find((one) => one < (meta.min ?? -Infinity) || one > (meta.max ?? Infinity))
	if (outside !== undefined) return { error: `${outside} is outside what can be measured: allowed ${limits}. Check the reading and the unit.` }
	const list = path.endsWith('fpi6')
	const value = parsed.values.length === 1 && !list ? parsed.values[0] : parsed.values
	if (!schemaAt(visitSchema, path).safeParse(value).success) return { error: list ? `Six items are needed, given ${parsed.values.length}.` : parsed.values.length > 1 ? 'Give one value here, or at most six repeats.' : `Give a whole number, ${limits}.` }
	const odd = parsed.values.find((one) => one < (meta.softMin ?? one) || one > (meta.softMax ?? one))
	return { value, ...(odd === undefined ? {} : { warning: `${odd} ${meta.unit} is unusual (${meta.softMin} to ${meta.softMax} expected). Right?` }) }
}
const asText = (value: unknown): string => (Array.isArray(value) ? value.join(' ') : value === undefined || value === null ? '' : String(value))

export function MeasureField({ path, draft, change, before }: FieldProps) {
	const meta = fieldMeta(visitSchema, path)
	const side = /\.(left|right)\./.exec(path)?.[1]
	const name = side ? `${meta.title}, ${side}` : meta.title
	const value = readPath(draft.visit, path)
	const stored = draft.raw[path] ?? draft.visit.notMeasured?.[path] ?? asText(value)
	const [typed, setTyped] = useState<string>()
	if (meta.kind === 'yesNo')
		return (
			<ToggleButtonGroup exclusive size="small" aria-label={name} value={value === undefined ? 'not-asked' : value ? 'yes' : 'no'} onChange={(_, next: string | null) => next && change((now) => withValue(now, path, next === 'not-asked' ? undefined : next === 'yes'))} onKeyDown={(event) => {
				if (event.key === 'y' || event.key === 'n') change((now) => withValue(now, path, event.key === 'y'))
			}}>
				<ToggleButton value="not-asked">Not asked</ToggleButton>
				<ToggleButton value="no">No</ToggleButton>
				<ToggleButton value="yes" color="error">Yes</ToggleButton>
			</ToggleButtonGroup>
		)
	if (meta.kind === 'date') return <DateField label="" name={name} size="small" value={stored} set={(next) => change((now) => (next.trim() === '' ? withValue(now, path, undefined) : parseDate(next).ok ? withValue(now, path, next) : withRaw(now, path, next)))} />
	if (meta.kind === 'choice')
		return (
			<TextField select fullWidth size="small" value={stored} onChange={(event) => change((now) => withValue(now, path, event.target.value || undefined))} slotProps={{ select: { native: true }, htmlInput: { 'aria-label': name } }}>
				<option value="">not recorded</option>
				{meta.options.map((term) => <option key={term} value={term}>{termWords(term)}</option>)}
			</TextField>
		)
	const text = typed ?? stored
	const { error, warning } = judge(path, text)
	const number = meta.kind === 'number'
	const mean = number && Array.isArray(value) && value.length > 1 && !path.endsWith('fpi6') ? meanOf(value as number[]) : undefined
	const last = number ? meanOf(before as number | number[] | undefined) : undefined
	const help = error ?? warning ?? [mean === undefined ? '' : `mean ${rounded(mean, 1)} ${meta.unit}`, last === undefined || path.endsWith('fpi6') ? '' : `last visit ${rounded(last, 1)}`].filter(Boolean).join(', ')
	return (
		<TextField
			fullWidth
			size="small"
			value={text}
			error={Boolean(error)}
			helperText={help || ' '}
			onChange={(event) => {
				const next = event.target.value
				setTyped(next)
				const judged = judge(path, next)
				change((now) => (judged.notMeasured ? withNotMeasured(now, path) : judged.error === undefined ? withValue(now, path, judged.value) : withRaw(now, path, next)))
			}}
			onBlur={() => setTyped(undefined)}
			slotProps={{ htmlInput: { 'aria-label': name, inputMode: number ? 'decimal' : 'text', autoComplete: 'off', style: number ? { fontSize: '1.25rem', fontVariantNumeric: 'tabular-nums' } : {} }, input: number ? { endAdornment: <Typography variant="body2" color="text.secondary" sx={{ pl: 1, whiteSpace: 'nowrap' }}>{meta.unit}</Typography> } : {}, formHelperText: { role: error || warning ? 'alert' : undefined, sx: warning && !error ? { color: 'warning.main' } : {} } }}
		/>
	)
}
/** A row of the form: its label once, then one field, or left and right in their columns. */
export function FieldRow({ paths, hint, ...rest }: { paths: readonly string[]; hint?: string | undefined; before?: readonly unknown[] } & Omit<FieldProps, 'path' | 'before'>) {
	const meta = fieldMeta(visitSchema, paths[0] ?? '')
	return (
		<Box sx={{ display: 'grid', gridTemplateColumns: paths.length === 2 ? 'minmax(180px, 1.1fr) 1fr 1fr' : 'minmax(180px, 1.1fr) 2fr', columnGap: 2, alignItems: 'start' }}>
			<Box sx={{ pt: 1 }}>
				<Typography sx={{ fontWeight: 600 }}>{meta.title}</Typography>
				{hint ? <Typography variant="body2" color="text.secondary">{hint}</Typography> : null}
			</Box>
			{paths.map((path, index) => <MeasureField key={path} path={path} draft={rest.draft} change={rest.change} before={rest.before?.[index]} />)}
		</Box>
	)
}
