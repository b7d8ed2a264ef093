/** Fields of what a paper says beyond what was found: titles and limits come from their schema. */
import { TextField } from '@mui/material'
import { fieldMeta } from '../../../../../shared/engine/visit/field-meta.ts'
import { letterSchema, orderSchema } from '../../../../../shared/engine/visit/letters.ts'
import type { DraftProps } from '../../stepProps.ts'
import { type Paper, paperOf, withPaper } from './paper.ts'

const schemas = { letter: letterSchema, order: orderSchema }

interface PaperTextProps extends DraftProps {
	of: Paper
	/** The key of its schema. */
	field: string
	lines?: boolean
	/** What stands on the page where nothing is typed. */
	otherwise?: string
	hint?: string
}
/** A text of its own; empty it is no entry. */
export function PaperText(props: PaperTextProps) {
	const { of, field, draft, change, lines, otherwise, hint } = props
	const { title, maxLength } = fieldMeta(schemas[of], field)
	const typed = paperOf(draft, of)[field]
	return (
		<TextField
			fullWidth
			size="small"
			label={title}
			value={typeof typed === 'string' ? typed : ''}
			multiline={lines ?? false}
			placeholder={otherwise}
			helperText={hint}
			onChange={({ target }) =>
				change((now) =>
					withPaper(now, of, field, target.value.trim() === '' ? undefined : target.value),
				)
			}
			slotProps={{ htmlInput: { maxLength, autoComplete: 'off' }, inputLabel: { shrink: true } }}
		/>
	)
}
