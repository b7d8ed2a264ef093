/** A text written on Sign: its title and limit come from the schema of its part. */
import { TextField } from '@mui/material'
import { agreementSchema } from '../../../../shared/engine/visit/agreement.ts'
import { fieldMeta } from '../../../../shared/engine/visit/field-meta.ts'
import { letterSchema, orderSchema } from '../../../../shared/engine/visit/letters.ts'
import type { DraftProps } from '../stepProps.ts'
import { type Written, withWritten, writtenAt } from './written.ts'

const schemas = { agreement: agreementSchema, letter: letterSchema, order: orderSchema }
interface WrittenTextProps extends DraftProps {
	of: Written
	/** Within its part. */
	path: string
	lines?: boolean | undefined
	/** In place of the title of the schema. */
	label?: string | undefined
	hint?: string | undefined
	/** What stands on the page where nothing is typed. */
	otherwise?: string | undefined
}
/** Empty it is no entry. */
export function WrittenText(props: WrittenTextProps) {
	const { of, path, draft, change, lines = false, label, hint, otherwise } = props
	const { title, maxLength } = fieldMeta(schemas[of], path)
	const typed = writtenAt(draft, of, path)
	const put = (text: string) =>
		change((now) => withWritten(now, of, path, text.trim() === '' ? undefined : text))
	return (
		<TextField
			fullWidth
			size="small"
			label={label ?? title}
			value={typeof typed === 'string' ? typed : ''}
			multiline={lines}
			placeholder={otherwise}
			helperText={hint}
			onChange={({ target }) => put(target.value)}
			slotProps={{ htmlInput: { maxLength, autoComplete: 'off' }, inputLabel: { shrink: true } }}
		/>
	)
}
