/**
 * Decide: the prescription as a plain list of questions, each settled by one answer, beside the
 * page as it would print.
 */
import { Alert, Box, Stack } from '@mui/material'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import { ReportPreview, roomBeside } from '../../../parts/ReportPreview.tsx'
import type { StepProps } from '../stepProps.ts'
import { QuestionList } from './QuestionList.tsx'
import { Quiet } from './Quiet.tsx'

interface DecideProps extends StepProps {
	/** Undefined where the clinic has none, or where it did not open. */
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
	/** The question that was asked for from another step; empty where none was. */
	wanted: string
}
export function Decide(props: DecideProps) {
	const { draft, assessment, earlier } = props
	// where there is no room beside the questions the preview stands above them, closed until wanted
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr) minmax(28rem, 34%)',
				gap: 3,
				alignItems: 'start',
				[`@container (max-width: ${roomBeside}rem)`]: {
					gridTemplateColumns: 'minmax(0, 1fr)',
					'& > :last-child': { order: -1 },
				},
			}}
		>
			<Stack spacing={3}>
				{assessment ? (
					<QuestionList {...props} assessment={assessment} />
				) : (
					<Alert severity="warning">
						The findings cannot be worked out from the entries as they stand. Look through the
						earlier steps; what you decide here is kept.
					</Alert>
				)}
				<Quiet {...props} />
			</Stack>
			<ReportPreview draft={draft} assessment={assessment} earlier={earlier} />
		</Box>
	)
}
