/**
 * One field of the visit, read from its schema: number with repeats, choice, yes/no/not asked, or
 * text.
 */
import { Box, TextField, ToggleButton, ToggleButtonGroup, Typography } from '@mui/material'
import { type ReactNode, useContext, useEffect, useState } from 'react'
import type { DraftContent } from '../../shared/contract.ts'
import { fieldMeta } from '../../shared/engine/visit/field-meta.ts'
import { meanOf, rounded } from '../../shared/engine/visit/sides.ts'
import { termWords } from '../../shared/engine/visit/terms.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { DateField } from './DateField.tsx'
import { readPath, withNotMeasured, withRaw, withValue } from './draft-path.ts'
import { judge, reasonOf, reasonsNotMeasured } from './judge.ts'
import { PasteBlock } from './PasteDialog.tsx'
import { parseDate } from './parseDate.ts'
import { isBlock } from './pasteBlock.ts'
import { unitShown } from './units.ts'

export interface FieldProps {
	path: string
	draft: DraftContent
	change: (update: (now: DraftContent) => DraftContent) => void
	before?: unknown
}
/**
 * Raised when the draft went back a step: what stands half typed in a field is not the draft any
 * more.
 */
export const undone = 'lastwright-undone'
/** A field may copy its other side with this key. */
export const sameAsOther = '='
const otherOf = (path: string): string | undefined =>
	/\.left\./.test(path)
		? path.replace('.left.', '.right.')
		: /\.right\./.test(path)
			? path.replace('.right.', '.left.')
			: undefined
const signed = (value: number): string => `${value > 0 ? '+' : ''}${value}`
const asText = (value: unknown): string =>
	Array.isArray(value)
		? value.join(' ')
		: value === undefined || value === null
			? ''
			: String(value)

export function MeasureField({ path, draft, change, before }: FieldProps) {
	const meta = fieldMeta(visitSchema, path)
	const side = /\.(left|right)\./.exec(path)?.[1]
	const name = side ? `${meta.title}, ${side}` : meta.title
	const value = readPath(draft.visit, path)
	const stored = draft.raw[path] ?? draft.visit.notMeasured?.[path] ?? asText(value)
	const [typed, setTyped] = useState<string>()
	const takeBlock = useContext(PasteBlock)
	useEffect(() => {
		const back = () => setTyped(undefined)
		addEventListener(undone, back)
		return () => removeEventListener(undone, back)
	}, [])
	const other = otherOf(path)
	/** The other side's value; the key does nothing where there is none yet. */
	const copyOther = (event: React.KeyboardEvent) => {
		const there =
			other === undefined || event.key !== sameAsOther ? undefined : readPath(draft.visit, other)
		if (there === undefined) return
		event.preventDefault()
		setTyped(undefined)
		change((now) => withValue(now, path, readPath(now.visit, other ?? '')))
	}
	if (meta.kind === 'yesNo')
		return (
			<ToggleButtonGroup
				exclusive
				size="small"
				aria-label={name}
				value={value === undefined ? 'not-asked' : value ? 'yes' : 'no'}
				onChange={(_, next: string | null) =>
					next &&
					change((now) => withValue(now, path, next === 'not-asked' ? undefined : next === 'yes'))
				}
				onKeyDown={(event) => {
					if (event.key === 'y' || event.key === 'n')
						change((now) => withValue(now, path, event.key === 'y'))
				}}
			>
				{/* an answer stands out, the lack of one does not */}
				<ToggleButton
					value="not-asked"
					sx={{
						'&.Mui-selected, &.Mui-selected:hover': {
							bgcolor: 'action.selected',
							color: 'text.primary',
						},
					}}
				>
					Not asked
				</ToggleButton>
				<ToggleButton value="no">No</ToggleButton>
				<ToggleButton value="yes" color="error">
					Yes
				</ToggleButton>
			</ToggleButtonGroup>
		)
	if (meta.kind === 'date')
		return (
			<DateField
				label=""
				name={name}
				size="small"
				value={stored}
				set={(next) =>
					change((now) =>
						next.trim() === ''
							? withValue(now, path, undefined)
							: parseDate(next).ok
								? withValue(now, path, next)
								: withRaw(now, path, next),
					)
				}
			/>
		)
	if (meta.kind === 'choice')
		return (
			<TextField
				select
				fullWidth
				size="small"
				helperText=" "
				value={stored}
				onChange={(event) => change((now) => withValue(now, path, event.target.value || undefined))}
				slotProps={{
					select: { native: true },
					htmlInput: { 'aria-label': name, 'data-path': path, onKeyDown: copyOther },
				}}
			>
				<option value="">not recorded</option>
				{meta.options.map((term) => (
					<option key={term} value={term}>
						{termWords(term)}
					</option>
				))}
			</TextField>
		)
	const text = typed ?? stored
	const { error, warning } = judge(path, text)
	const number = meta.kind === 'number'
	const mean =
		number && Array.isArray(value) && value.length > 1 && !path.endsWith('fpi6')
			? meanOf(value as number[])
			: undefined
	const last =
		number && !path.endsWith('fpi6') ? meanOf(before as number | number[] | undefined) : undefined
	const mean1 = last === undefined ? undefined : meanOf(value as number | number[] | undefined)
	const reason = number ? draft.visit.notMeasured?.[path] : undefined
	const help =
		error ??
		warning ??
		(mean === undefined ? '' : `mean ${rounded(mean, 1)} ${unitShown(meta.unit)}`.trim())
	const lastWords =
		last === undefined
			? ''
			: 'last visit ' +
				`${rounded(last, 1)}${mean1 === undefined ? '' : `, ${signed(rounded(mean1 - last, 1))} ${unitShown(meta.unit)}`.trimEnd()}`
	return (
		<Box>
			<TextField
				fullWidth
				size="small"
				value={text}
				error={Boolean(error)}
				helperText={
					help || lastWords ? (
						<>
							{help}
							{help && lastWords ? <br /> : null}
							{lastWords ? (
								<Box component="span" sx={{ color: 'text.secondary' }}>
									{lastWords}
								</Box>
							) : null}
						</>
					) : (
						' '
					)
				}
				onChange={(event) => {
					const next = event.target.value
					setTyped(next)
					const judged = judge(path, next)
					change((now) =>
						judged.notMeasured !== undefined
							? withNotMeasured(now, path, judged.notMeasured)
							: judged.error === undefined
								? withValue(now, path, judged.value)
								: withRaw(now, path, next),
					)
				}}
				onBlur={() => setTyped(undefined)}
				onKeyDown={copyOther}
				onPaste={(event) => {
					const block = event.clipboardData.getData('text/plain')
					if (isBlock(block) && takeBlock(path, block)) event.preventDefault()
				}}
				slotProps={{
					htmlInput: {
						'aria-label': name,
						'data-path': path,
						'aria-keyshortcuts': other ? sameAsOther : undefined,
						inputMode: number ? 'decimal' : 'text',
						autoComplete: 'off',
						style: number
							? {
									...(reason === undefined
										? { fontSize: '1.5rem', fontWeight: 600 }
										: { fontSize: '1rem' }),
									paddingTop: 4,
									paddingBottom: 4,
									fontVariantNumeric: 'tabular-nums',
								}
							: {},
					},
					input: number
						? {
								endAdornment: (
									<Typography
										variant="body2"
										color="text.secondary"
										sx={{ pl: 1, whiteSpace: 'nowrap' }}
									>
										{unitShown(meta.unit)}
									</Typography>
								),
							}
						: {},
					formHelperText: {
						role: error || warning ? 'alert' : undefined,
						sx: warning && !error ? { color: 'warning.main' } : {},
					},
				}}
			/>
			{reason === undefined ? null : (
				<Box
					component="label"
					sx={{
						display: 'flex',
						alignItems: 'center',
						gap: 1,
						fontSize: '0.875rem',
						color: 'text.secondary',
						mb: 1,
						whiteSpace: 'nowrap',
					}}
				>
					Why not
					<Box
						component="select"
						data-aside=""
						aria-label={`${name}: why not measured`}
						value={reasonOf(reason) ?? ''}
						onChange={(event: React.ChangeEvent<HTMLSelectElement>) => {
							const words = event.target.value
							setTyped(undefined)
							change((now) => withNotMeasured(now, path, words))
						}}
						sx={{
							font: 'inherit',
							minHeight: 44,
							minWidth: 0,
							flex: 1,
							color: 'text.primary',
							bgcolor: 'background.paper',
						}}
					>
						{reasonOf(reason) === undefined ? <option value="">{reason}</option> : null}
						{reasonsNotMeasured.map((one) => (
							<option key={one.keys} value={one.words}>
								{one.words} ({one.keys})
							</option>
						))}
					</Box>
				</Box>
			)}
		</Box>
	)
}
/**
 * A label and its one or two columns. With large letters the columns go below the label, so that no
 * value is cut off; headings use the same columns and so stand over them.
 */
export function RowColumns({
	label,
	two,
	children,
}: {
	label: ReactNode
	two: boolean
	children: ReactNode
}) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 2, alignItems: 'start' }}>
			<Box sx={{ flex: '1.1 1 0', minWidth: 'min(11rem, 100%)' }}>{label}</Box>
			<Box
				sx={{
					flex: '2 1 0',
					minWidth: 'min(22rem, 100%)',
					display: 'grid',
					gridTemplateColumns: two ? 'minmax(0, 1fr) minmax(0, 1fr)' : 'minmax(0, 1fr)',
					columnGap: 2,
					alignItems: 'start',
				}}
			>
				{children}
			</Box>
		</Box>
	)
}
/** A row of the form: its label once, then one field, or left and right in their columns. */
export function FieldRow({
	paths,
	hint,
	...rest
}: { paths: readonly string[]; hint?: string | undefined; before?: readonly unknown[] } & Omit<
	FieldProps,
	'path' | 'before'
>) {
	const meta = fieldMeta(visitSchema, paths[0] ?? '')
	const label = (
		<Box sx={{ pt: 1 }}>
			<Typography sx={{ fontWeight: 600 }}>{meta.title}</Typography>
			{hint ? (
				<Typography variant="body2" color="text.secondary">
					{hint}
				</Typography>
			) : null}
		</Box>
	)
	return (
		<RowColumns label={label} two={paths.length === 2}>
			{paths.map((path, index) => (
				<MeasureField
					key={path}
					path={path}
					draft={rest.draft}
					change={rest.change}
					before={rest.before?.[index]}
				/>
			))}
		</RowColumns>
	)
}
