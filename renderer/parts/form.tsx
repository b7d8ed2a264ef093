/** Labelled native inputs for the short forms, and the one way an error is shown. */
import { Alert, TextField } from '@mui/material'

export function Field(props: { label: string; value: string; set: (value: string) => void; type?: string; focus?: boolean }) {
	return <TextField fullWidth margin="dense" label={props.label} value={props.value} type={props.type ?? 'text'} autoFocus={props.focus} onChange={(event) => props.set(event.target.value)} slotProps={{ inputLabel: { shrink: true } }} />
}
export function Trouble({ says }: { says: string }) {
	return says ? <Alert severity="error" role="alert">{says}</Alert> : null
}
