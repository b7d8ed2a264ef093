/** The day of the next visit. */
import { Box } from '@mui/material'
import { DateField } from '../../../parts/DateField.tsx'
import { parseDate } from '../../../parts/parseDate.ts'
import { typedText, typeFields } from './answering.ts'
import type { FieldsProps } from './ChangeFields.tsx'

export function ReviewFields({ draft, change, question, fields }: FieldsProps) {
	const put = (text: string) => {
		const read = parseDate(text)
		change((now) =>
			typeFields(
				now,
				question,
				{ reviewDate: text },
				read.ok ? { reviewDate: read.iso } : undefined,
			),
		)
	}
	return (
		<Box sx={{ width: 300 }}>
			<DateField
				size="small"
				label="Review date"
				value={typedText(draft, question, 'reviewDate', fields.reviewDate)}
				set={put}
			/>
		</Box>
	)
}
