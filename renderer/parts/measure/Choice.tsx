/** A term of the visit, chosen from its list. */
import { TextField } from '@mui/material'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { withValue } from '../draft-path.ts'
import { copyOther, type FieldProps, nameOf, storedText } from './fieldState.ts'

export function Choice({ options, ...field }: FieldProps & { options: readonly string[] }) {
	const { path, change } = field
	return (
		<TextField
			select
			fullWidth
			size="small"
			value={storedText(field)}
			onChange={(event) => change((now) => withValue(now, path, event.target.value || undefined))}
			slotProps={{
				select: { native: true },
				htmlInput: {
					'aria-label': nameOf(path),
					'data-path': path,
					onKeyDown: copyOther(field),
				},
			}}
		>
			<option value="">not recorded</option>
			{options.map((term) => (
				<option key={term} value={term}>
					{termWords(term)}
				</option>
			))}
		</TextField>
	)
}
