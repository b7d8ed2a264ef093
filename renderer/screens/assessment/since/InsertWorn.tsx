/** The insert of ours that the player comes with, at a visit that is no re-check. */
import { Typography } from '@mui/material'
import { adjustmentLine } from '../../../../shared/engine/words/en/insert-adjust.ts'
import { DenseField, DenseGrid } from '../../../parts/DenseField.tsx'
import { dayInWords } from '../../../parts/dates.ts'
import type { DraftProps } from '../stepProps.ts'
import { InsertPlaces } from './InsertPlaces.tsx'

export function InsertWorn({ draft, change }: DraftProps) {
	const worn = draft.visit.insertWorn
	if (!worn) return null
	const { left, right, stillWorn } = worn
	const sides = left && right ? 'both' : left ? 'left' : right ? 'right' : 'both'
	return (
		<>
			<InsertBefore {...worn} />
			<DenseGrid columnRem={14}>
				<DenseField path="insertWorn.stillWorn" draft={draft} change={change} />
				{stillWorn !== false && <InsertPlaces draft={draft} change={change} sides={sides} />}
			</DenseGrid>
		</>
	)
}
/** When it was ordered, and what was done to it since. */
export function InsertBefore({
	orderedOn,
	adjusted = [],
}: NonNullable<DraftProps['draft']['visit']['insertWorn']>) {
	return (
		<Typography variant="body2" color="text.secondary">
			Ordered on {dayInWords(orderedOn)}.
			{adjusted.map(
				({ on, lines }) =>
					` Adjusted on ${dayInWords(on)}: ${lines.map(adjustmentLine).join('; ')}.`,
			)}
		</Typography>
	)
}
