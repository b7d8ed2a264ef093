/** The line of a question: what is proposed, why, how surely, and how it was settled. */
import { Box, ButtonBase } from '@mui/material'
import type { ReactNode } from 'react'
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment, Question } from '../../../../shared/engine/findings/assessment.ts'
import type { Firm } from '../../../../shared/engine/firmness/firmness.ts'
import { answerTo } from '../../../../shared/engine/prescription/answers.ts'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import { type QuestionState, stateOf } from './answering.ts'
import { GateLine, isLoud } from './GateLine.tsx'
import { heldLine } from './heldWords.ts'
import { changedByWords, firmly, reasonWords, stateWords } from './proposalWords.ts'
import { titleOfQuestion } from './questionTitles.ts'

const columns = '1.5rem minmax(0, 1fr) auto'
const line = { borderBottom: 1, borderColor: 'divider' }
const small = { fontSize: '0.8125rem', lineHeight: 1.35 } as const
interface HeldProps {
	question: Question
	assessment: Assessment
	number: number
}
/** A held question proposes nothing and asks nothing. */
export function HeldRow({ question, assessment, number }: HeldProps) {
	return (
		<Box
			component="li"
			data-state="held"
			sx={{
				...line,
				display: 'grid',
				gridTemplateColumns: '1.5rem minmax(0, 1fr)',
				columnGap: 1,
				px: 1,
				py: 0.75,
				color: 'text.secondary',
				...small,
			}}
		>
			<span>{number}</span>
			<span>
				{titleOfQuestion(question.id)} {heldLine(assessment, question)}
			</span>
		</Box>
	)
}

interface RowProps {
	question: AskedNow
	assessment: Assessment
	draft: DraftContent
	number: number
	/** Undefined where it was not tried, or not yet. */
	firm: Firm | undefined
	open: boolean
	/** One row stands in the order of Tab; arrows go to the others. */
	inTab: boolean
	setOpen: (open: boolean) => void
	/** As many lines of text as it takes while it is closed. */
	lines: number
	/** The question in hand, where it unfolds here. */
	children: ReactNode
}
/** Where the question in hand stands: it is one, wherever it is. */
export const panelId = 'question-in-hand'

export function QuestionRow(props: RowProps) {
	const { question, assessment, draft, number, open, inTab, setOpen, children } = props
	const state = stateOf(draft, question)
	const loud = question.id === 'gate' && isLoud(assessment.prescription.gate)
	return (
		<Box component="li" sx={line}>
			<ButtonBase
				data-question={question.id}
				data-state={state}
				aria-expanded={open}
				aria-controls={open ? panelId : undefined}
				tabIndex={inTab ? 0 : -1}
				onClick={() => setOpen(!open)}
				sx={{
					display: 'grid',
					gridTemplateColumns: columns,
					columnGap: 1,
					width: '100%',
					minHeight: 44,
					px: 1,
					py: 0.5,
					textAlign: 'left',
					font: 'inherit',
					alignItems: 'start',
					'&:focus-visible': { outlineOffset: '-3px' },
					...(open ? { bgcolor: 'action.selected', boxShadow: openMark } : {}),
					...(loud ? loudRow : {}),
				}}
			>
				<Box
					component="span"
					sx={{ ...small, pt: '1px', color: loud ? 'inherit' : 'text.secondary' }}
				>
					{number}
				</Box>
				{loud ? <GateLine assessment={assessment} says={question.says} /> : <Says {...props} />}
				<State state={state} loud={loud} {...props} />
			</ButtonBase>
			{children}
		</Box>
	)
}
const openMark = 'inset 3px 0 0 currentColor'
const loudRow = {
	bgcolor: 'error.main',
	color: 'error.contrastText',
	py: 1,
	'&:hover': { bgcolor: 'error.dark' },
}
/** Name, proposal and strongest reason. */
function Says({ question, assessment, open, lines }: RowProps) {
	const reason = reasonWords(question, assessment)
	const changed = changedByWords(question)
	return (
		<Box
			component="span"
			sx={{
				...small,
				fontSize: '0.875rem',
				display: '-webkit-box',
				WebkitBoxOrient: 'vertical',
				WebkitLineClamp: open ? 'unset' : lines,
				overflow: 'hidden',
			}}
		>
			<Box component="span" sx={{ fontWeight: 700, mr: 1 }}>
				{titleOfQuestion(question.id)}
			</Box>
			{question.says}
			{changed ? (
				<Box component="span" sx={{ ml: 1, fontWeight: 600, color: 'warning.main' }}>
					<span aria-hidden>↻ </span>
					{changed}
				</Box>
			) : (
				reason && (
					<Box component="span" sx={{ ...small, ml: 1, color: 'text.secondary' }}>
						{reason}
					</Box>
				)
			)}
		</Box>
	)
}
const stateColour: Readonly<Record<QuestionState, string>> = {
	settled: 'text.secondary',
	overtaken: 'warning.main',
	open: 'primary.main',
	held: 'text.secondary',
}
interface StateProps extends RowProps {
	state: QuestionState
	/** On the colour of a stop: in the colour of its words. */
	loud: boolean
}
function State({ state, loud, question, draft, firm }: StateProps) {
	const words = firm && firm.firmness !== 'not-worked-out' ? firmly[firm.firmness] : ''
	return (
		<Box component="span" sx={{ ...small, textAlign: 'right', width: '6rem' }}>
			<Box
				component="span"
				sx={{
					display: 'block',
					fontWeight: state === 'settled' ? 400 : 600,
					color: loud ? 'inherit' : stateColour[state],
				}}
			>
				{stateWords(state, answerTo(draft.decisions, question))}
			</Box>
			{words && (
				<Box
					component="span"
					sx={{
						display: 'block',
						...(firm?.firmness === 'steady'
							? { color: 'text.secondary' }
							: { fontWeight: 600, color: 'warning.main' }),
					}}
				>
					{words}
				</Box>
			)}
		</Box>
	)
}
