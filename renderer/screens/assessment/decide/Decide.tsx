/**
 * Decide: the plan as a short list, the question in hand beside it, and the page as it would print.
 * Where there is no room, the question unfolds beneath its line and the page stands below.
 */
import { Alert, Box } from '@mui/material'
import { useEffect, useRef } from 'react'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import { ReportPreview } from '../../../parts/ReportPreview.tsx'
import type { StepProps } from '../stepProps.ts'
import { QuestionList } from './QuestionList.tsx'
import { Quiet } from './Quiet.tsx'
import { type Columns, useColumns } from './useColumns.ts'

interface DecideProps extends StepProps {
	/** Undefined where the clinic has none, or where it did not open. */
	shelf: Shelf | undefined
	/** Why the shelf did not open; empty where it did. */
	shelfTrouble: string
	/** The question that was asked for from another step; empty where none was. */
	wanted: string
}
const widths: Readonly<Record<Columns, string>> = {
	one: 'minmax(0, 1fr)',
	two: 'minmax(0, 46fr) minmax(0, 54fr)',
	three: 'minmax(0, 31fr) minmax(0, 34fr) minmax(0, 35fr)',
}
const whole = { gridColumn: '1 / -1', minWidth: 0 }

export function Decide(props: DecideProps) {
	const { draft, assessment, earlier } = props
	const box = useRef<HTMLDivElement>(null)
	const columns = useColumns(box)
	// what the step before was scrolled to is no place in this one
	useEffect(() => {
		box.current?.scrollIntoView({ block: 'start' })
	}, [])
	return (
		<Box
			ref={box}
			sx={{
				display: 'grid',
				scrollMarginTop: 'var(--walk-head)',
				gridTemplateColumns: widths[columns],
				columnGap: 2.5,
				rowGap: 2,
				alignItems: 'start',
			}}
		>
			{assessment ? (
				<QuestionList {...props} assessment={assessment} columns={columns} />
			) : (
				<Alert severity="warning" sx={{ gridColumn: columns === 'three' ? 'span 2' : whole }}>
					The findings cannot be worked out from the entries as they stand. Look through the earlier
					steps; what you decide here is kept.
				</Alert>
			)}
			<Box sx={columns === 'three' ? { minWidth: 0 } : whole}>
				<ReportPreview
					beside={columns === 'three'}
					draft={draft}
					assessment={assessment}
					earlier={earlier}
				/>
			</Box>
			<Box sx={whole}>
				<Quiet {...props} />
			</Box>
		</Box>
	)
}
