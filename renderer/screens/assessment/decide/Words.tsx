/** A field for words of the clinician's own. */
import { TextField } from '@mui/material'

interface WordsProps {
	label: string
	value: string
	/** Characters at most. */
	max: number
	set: (text: string) => void
	required?: boolean
	error?: boolean
	hint?: string
	placeholder?: string
	/** Whether it may run over several lines. */
	lines?: boolean
}
export function Words(props: WordsProps) {
	return (
		<TextField
			fullWidth
			size="small"
			label={props.label}
			value={props.value}
			required={props.required ?? false}
			error={props.error ?? false}
			helperText={props.hint}
			placeholder={props.placeholder}
			multiline={props.lines ?? false}
			onChange={(event) => props.set(event.target.value)}
			slotProps={{ htmlInput: { maxLength: props.max }, inputLabel: { shrink: true } }}
		/>
	)
}
