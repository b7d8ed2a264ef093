/** Labelled native inputs for the short forms, and the one way an error is shown and worded. */
import { Alert, Box, type SxProps, TextField } from '@mui/material'
import { type FormEvent, type ReactNode, useEffect, useId } from 'react'
import { HostRefusal } from '../host.ts'
import { askStatusAgain } from '../query.ts'
import { DateField } from './DateField.tsx'
import { Panel } from './panels.tsx'

/** A button beside fields stands in line with them, under where their labels are. */
export const besideField = { pt: { xs: 0, sm: '1.6rem' } } as const

interface FieldProps {
	label: string
	value: string
	set: (value: string) => void
	type?: string
	focus?: boolean
	/** Rows of a field of several lines. */
	rows?: number
	/** What is wrong with the entry, naming field, value and remedy. */
	error?: string
	hint?: string
	optional?: boolean
	autoComplete?: string
	options?: readonly string[]
	/** What may be chosen from while it is typed; other words can stand too. */
	offers?: readonly string[]
	/** Shown, and not to be changed here; the hint says why. */
	readOnly?: boolean
}
export function Field({
	label,
	value,
	set,
	type = 'text',
	focus,
	rows,
	error,
	hint,
	optional,
	autoComplete = 'off',
	options,
	offers,
	readOnly,
}: FieldProps) {
	const list = useId()
	if (type === 'date')
		return <DateField label={label} value={value} set={set} error={error} hint={hint} />
	const field = (
		<TextField
			fullWidth
			label={label}
			value={value}
			type={options || rows ? undefined : type}
			autoFocus={focus}
			error={Boolean(error)}
			helperText={error || hint || undefined}
			multiline={Boolean(rows)}
			rows={rows}
			select={Boolean(options)}
			autoComplete={autoComplete}
			onChange={(event) => set(event.target.value)}
			slotProps={{
				inputLabel: { shrink: true },
				select: { native: true },
				htmlInput: {
					'aria-required': optional ? undefined : true,
					spellCheck: false,
					readOnly,
					list: offers && list,
				},
			}}
		>
			{options && [
				<option key="" value="">
					Choose
				</option>,
				...options.map((option) => (
					<option key={option} value={option}>
						{option}
					</option>
				)),
			]}
		</TextField>
	)
	if (!offers) return field
	return (
		<div>
			{field}
			<datalist id={list}>
				{offers.map((offer) => (
					<option key={offer} value={offer} />
				))}
			</datalist>
		</div>
	)
}

export function Trouble({ says }: { says: string }) {
	useEffect(() => {
		// perhaps the records were locked meanwhile
		if (says) askStatusAgain()
	}, [says])
	return says ? (
		<Alert severity="error" role="alert">
			{says}
		</Alert>
	) : null
}

/** What an act of the person came to: refused, or done, in words. */
export function Outcome({ of: { says, done } }: { of: { says: string; done: string } }) {
	return (
		<>
			<Trouble says={says} />
			{done && (
				<Alert severity="success" role="status">
					{done}
				</Alert>
			)}
		</>
	)
}

/** A form whose entries are asked for here, never by the browser. */
export function Form({
	label,
	submit,
	sx,
	children,
}: {
	label?: string
	submit: () => void
	sx?: SxProps
	children: ReactNode
}) {
	return (
		<Box
			component="form"
			noValidate
			aria-label={label}
			sx={sx}
			onSubmit={(event: FormEvent) => {
				event.preventDefault()
				submit()
			}}
		>
			{children}
		</Box>
	)
}

/** A titled part with fields, two columns where the window is wide enough, none wider than is read. */
export function Sheet({
	title,
	hint,
	children,
}: {
	title: string
	hint?: string
	children: ReactNode
}) {
	return (
		<Panel title={title} hint={hint}>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: { xs: 'minmax(0, 1fr)', md: 'repeat(2, minmax(0, 1fr))' },
					gap: 2,
					alignItems: 'start',
					maxWidth: '52rem',
				}}
			>
				{children}
			</Box>
		</Panel>
	)
}

interface Issue {
	path: PropertyKey[]
	message: string
	code?: string
	format?: string
	maximum?: number | bigint
}
/** Words one schema issue for the person: field, value, remedy. */
export function issueWords(title: string, value: string, issue: Issue): string {
	const typed = value.trim()
	if (issue.code === 'invalid_value') return `${title} is not chosen. Choose one from the list.`
	if (!typed) return `${title} is empty. Fill it in.`
	if (issue.code === 'too_big')
		return `${title} has ${typed.length} characters. Shorten it to ${issue.maximum} or fewer.`
	if (issue.format === 'email')
		return `${title} ${typed} is not an e-mail address. Write one such as name@example.org.`
	if (issue.format === 'date')
		return `${title} ${typed} is not a date of the calendar. Write it such as 30 June 2011.`
	return `${title} ${typed} cannot be used: ${issue.message}.`
}
/**
 * The host's problems by field path, `prefix` taken off; and the sentence for those that belong to
 * no shown field.
 */
export function byField(
	error: unknown,
	prefix: string,
	shown: readonly string[],
): { fields: Record<string, string>; says: string } {
	const fields: Record<string, string> = {}
	const rest: string[] = [error instanceof Error ? error.message : String(error)]
	for (const { path, message } of error instanceof HostRefusal ? error.problems : []) {
		const key = path.startsWith(`${prefix}.`) ? path.slice(prefix.length + 1) : path
		if (shown.includes(key)) fields[key] = message
		else rest.push(`${path}: ${message}`)
	}
	return { fields, says: rest.join(' ') }
}
