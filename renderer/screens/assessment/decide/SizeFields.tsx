/** The band of inside lengths, as the clinician wants it. */
import { Stack } from '@mui/material'
import { typedText, typeFields } from './answering.ts'
import type { FieldsProps } from './ChangeFields.tsx'
import { MmField } from './MmField.tsx'
import { type BandTexts, bandEnds, readBand } from './proposedFields.ts'

const labels: Readonly<Record<(typeof bandEnds)[number], string>> = {
	min: 'Shortest inside length',
	target: 'Best inside length',
	max: 'Longest inside length',
}
export function SizeFields({ draft, change, question, fields }: FieldsProps) {
	const text = (end: keyof BandTexts) =>
		typedText(draft, question, end, fields.insideLengthMm?.[end])
	const texts: BandTexts = { min: text('min'), target: text('target'), max: text('max') }
	const { wrong } = readBand(texts)
	const put = (end: keyof BandTexts, typed: string) => {
		const next = { ...texts, [end]: typed }
		const { insideLengthMm } = readBand(next)
		change((now) => typeFields(now, question, next, insideLengthMm && { insideLengthMm }))
	}
	return (
		<Stack direction="row" useFlexGap sx={{ gap: 2, flexWrap: 'wrap' }}>
			{bandEnds.map((end) => (
				<MmField
					key={end}
					label={labels[end]}
					text={texts[end]}
					wrong={wrong[end] ?? ''}
					set={(typed) => put(end, typed)}
				/>
			))}
		</Stack>
	)
}
