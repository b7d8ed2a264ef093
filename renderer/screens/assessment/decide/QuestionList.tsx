/** The questions in their order, one of them open; below them how many are settled, and the keys. */
import { Box, Typography } from '@mui/material'
import { useCallback, useEffect, useRef, useState } from 'react'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import type { StepProps } from '../stepProps.ts'
import { besideQuestion, countSettled, nextOpen } from './answering.ts'
import { HeldQuestion, QuestionItem } from './QuestionItem.tsx'
import { useFirmness } from './useFirmness.ts'

interface QuestionListProps extends Pick<StepProps, 'draft' | 'change' | 'goTo' | 'earlier'> {
	assessment: Assessment
	shelf: Shelf | undefined
	shelfTrouble: string
	wanted: string
}
const rowIn = (list: HTMLElement | null, id: string) =>
	list?.querySelector<HTMLElement>(`button[data-question="${CSS.escape(id)}"]`)

export function QuestionList({ wanted, ...props }: QuestionListProps) {
	const { draft, earlier, assessment } = props
	const firm = useFirmness(draft.visit, earlier, assessment)
	const { questions } = assessment.prescription
	const list = useRef<HTMLOListElement>(null)
	// until one is opened or closed by hand it is the first that is not settled, as the answer comes
	const [chosen, setChosen] = useState<string | undefined>(wanted || undefined)
	const openId = chosen ?? nextOpen(draft, questions, '')
	const [moved, setMoved] = useState(wanted)
	const goToQuestion = useCallback((id: string | undefined) => {
		if (id === undefined) return
		setChosen(id)
		setMoved(id)
	}, [])
	// the row takes the focus once what stood open above it is closed
	useEffect(() => {
		if (!moved) return
		const row = rowIn(list.current, moved)
		row?.focus()
		row?.closest('li')?.scrollIntoView({ block: 'nearest' })
		setMoved('')
	}, [moved])
	if (questions.length === 0)
		return <Typography color="text.secondary">No question is to be settled yet.</Typography>
	return (
		<Box component="section" aria-label="Questions">
			<Box component="ol" ref={list} sx={rows}>
				{questions.map((question, at) =>
					question.held ? (
						<HeldQuestion key={question.id} {...{ question, assessment, number: at + 1 }} />
					) : (
						<QuestionItem
							key={question.id}
							{...props}
							question={question}
							number={at + 1}
							firm={firm[question.id]}
							open={question.id === openId}
							setOpen={(open) => setChosen(open ? question.id : '')}
							goOn={() => goToQuestion(nextOpen(draft, questions, question.id))}
							step={(by) => goToQuestion(besideQuestion(questions, question.id, by))}
						/>
					),
				)}
			</Box>
			<Foot {...props} />
		</Box>
	)
}
/** What takes the focus stays above the foot line. */
const rows = {
	listStyle: 'none',
	m: 0,
	p: 0,
	borderTop: 1,
	borderColor: 'divider',
	'& :is(button, input, select, textarea)': { scrollMarginBottom: '5rem' },
} as const
const keyWords = [
	['A', 'as proposed'],
	['C', 'change'],
	['S', 'set aside'],
	['U', 'unchanged since last visit'],
	['Enter', 'on to the next'],
] as const
/** How many are settled; the keys serve within the open question. */
function Foot({ draft, assessment }: Pick<QuestionListProps, 'draft' | 'assessment'>) {
	const { settled, asked } = countSettled(draft, assessment.prescription.questions)
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				columnGap: 3,
				rowGap: 0.5,
				alignItems: 'baseline',
				px: 1,
				py: 1,
				position: 'sticky',
				bottom: 0,
				zIndex: 1,
				bgcolor: 'background.default',
				borderTop: 1,
				borderColor: 'divider',
			}}
		>
			{keyWords.map(([key, does]) => (
				<Typography key={key} variant="body2" color="text.secondary">
					<Box component="kbd" sx={{ fontFamily: 'inherit', fontWeight: 600 }}>
						{key}
					</Box>{' '}
					{does}
				</Typography>
			))}
			<Typography role="status" sx={{ ml: 'auto', fontWeight: 600 }}>
				{settled} of {asked} settled
			</Typography>
		</Box>
	)
}
