/** A length in mm, as typed until it is one. */
import { TextField } from '@mui/material'

interface MmFieldProps {
	label: string
	text: string
	/** What cannot stand, in words; empty where it can. */
	wrong: string
	/** Said below it while nothing is wrong. */
	hint?: string
	set: (text: string) => void
}
export const MmField = ({ label, text, wrong, hint, set }: MmFieldProps) => (
	<TextField
		size="small"
		label={`${label} (mm)`}
		value={text}
		error={wrong !== ''}
		helperText={wrong || hint}
		onChange={(event) => set(event.target.value)}
		slotProps={{
			htmlInput: { inputMode: 'decimal', autoComplete: 'off' },
			inputLabel: { shrink: true },
		}}
		sx={{ width: '13rem' }}
	/>
)
