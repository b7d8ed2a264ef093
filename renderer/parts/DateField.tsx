/**
 * A date typed in any clear form and shown in words, so that day and month cannot change places
 * unseen.
 */
import { TextField } from '@mui/material'
import { useState } from 'react'
import { dayInWords } from './dates.ts'
import { parseDate } from './parseDate.ts'

interface DateFieldProps {
	label: string
	/** An ISO date, or the text that is not a date yet. */
	value: string
	set: (value: string) => void
	error?: string | undefined
	hint?: string | undefined
	size?: 'small' | 'medium'
	/** Its name where the label stands elsewhere. */
	name?: string
}
export function DateField({
	label,
	value,
	set,
	error,
	hint,
	size = 'medium',
	name,
}: DateFieldProps) {
	const [typed, setTyped] = useState<string>()
	const known = parseDate(value)
	const text = typed ?? (known.ok ? dayInWords(known.iso) : value)
	const parsed = text.trim() === '' ? undefined : parseDate(text)
	const read = typed !== undefined && parsed?.ok ? `Read as ${dayInWords(parsed.iso)}` : undefined
	const says = parsed && !parsed.ok && typed === undefined ? parsed.says : undefined
	return (
		<TextField
			fullWidth
			size={size}
			label={label || undefined}
			value={text}
			error={Boolean(error ?? says)}
			helperText={
				(error ?? says) ||
				read ||
				(parsed?.ok ? hint : parsed?.says || hint || 'Such as 2 May 2013') ||
				' '
			}
			onChange={(event) => {
				const next = event.target.value
				setTyped(next)
				const read = parseDate(next)
				set(read.ok ? read.iso : next)
			}}
			onBlur={() => setTyped(undefined)}
			slotProps={{
				inputLabel: { shrink: true },
				htmlInput: {
					autoComplete: 'off',
					spellCheck: false,
					...(name ? { 'aria-label': name } : {}),
				},
			}}
		/>
	)
}
