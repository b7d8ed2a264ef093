/** Small labelled fields for the season's short forms: the label is tied to its field. */
import { Box, TextField } from '@mui/material'
import { useId } from 'react'
import { DateField } from '../../parts/DateField.tsx'

const labelled = {
	'& label': { display: 'block', fontSize: '0.85rem', fontWeight: 600, mb: 0.25 },
} as const
/** As many columns as fit, none narrower than `least`, a CSS length. */
export const columns = (least: string) =>
	({
		display: 'grid',
		gridTemplateColumns: `repeat(auto-fit, minmax(min(${least}, 100%), 1fr))`,
		gap: 1,
	}) as const
interface Common {
	label: string
	value: string
	set: (value: string) => void
}
export function Text({ label, value, set, hint, rows }: Common & { hint?: string; rows?: number }) {
	const id = useId()
	return (
		<Box sx={labelled}>
			<label htmlFor={id}>{label}</label>
			<TextField
				id={id}
				size="small"
				fullWidth
				value={value}
				placeholder={hint}
				multiline={Boolean(rows)}
				rows={rows}
				onChange={(event) => set(event.target.value)}
				slotProps={{ htmlInput: { autoComplete: 'off', spellCheck: false } }}
			/>
		</Box>
	)
}
/**
 * A date with its label above, like the other fields. @param name its full name, where the label
 * alone does not tell it from another
 */
export function Day({ label, name, value, set, hint }: Common & { name?: string; hint?: string }) {
	return (
		<Box sx={{ fontSize: '0.85rem' }}>
			<Box component="span" aria-hidden sx={{ display: 'block', fontWeight: 600, mb: 0.25 }}>
				{label}
			</Box>
			<DateField
				size="small"
				label=""
				name={name ?? label}
				value={value}
				set={set}
				{...(hint === undefined ? {} : { hint })}
			/>
		</Box>
	)
}
/** @param none the words of the empty choice; with `required` there is none */
export function Choice({
	label,
	value,
	set,
	options,
	none = 'Choose',
	required,
}: Common & { options: readonly [string, string][]; none?: string; required?: boolean }) {
	const id = useId()
	return (
		<Box sx={labelled}>
			<label htmlFor={id}>{label}</label>
			<TextField
				id={id}
				size="small"
				fullWidth
				select
				value={value}
				onChange={(event) => set(event.target.value)}
				slotProps={{ select: { native: true } }}
			>
				{!required && <option value="">{none}</option>}
				{options.map(([key, words]) => (
					<option key={key} value={key}>
						{words}
					</option>
				))}
			</TextField>
		</Box>
	)
}
