/** One of a short list. */
import { TextField } from '@mui/material'

interface ChoiceProps<Value extends string> {
	label: string
	value: Value | ''
	options: readonly (readonly [value: Value, words: string])[]
	set: (value: Value) => void
	/** Shown first where nothing is chosen. */
	none?: string
	/** As narrow as its words are; otherwise one width for all. */
	narrow?: boolean
}
export function Choice<Value extends string>(props: ChoiceProps<Value>) {
	const { label, value, options, set, none, narrow = false } = props
	return (
		<TextField
			select
			size="small"
			label={label}
			value={value}
			onChange={(event) => {
				const found = options.find(([option]) => option === event.target.value)
				if (found) set(found[0])
			}}
			slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
			sx={narrow ? {} : { minWidth: '13rem' }}
		>
			{none !== undefined && <option value="">{none}</option>}
			{options.map(([option, words]) => (
				<option key={option} value={option}>
					{words}
				</option>
			))}
		</TextField>
	)
}
