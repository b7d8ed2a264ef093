/** The questions in their order, the one in hand beside or beneath its line, and the keys. */
import { Box, Typography } from '@mui/material'
import { type KeyboardEventHandler, type ReactNode, type RefObject, useState } from 'react'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { AskedNow } from '../../../../shared/engine/prescription/in-turn.ts'
import type { Shelf } from '../../../../shared/engine/visit/shelf.ts'
import type { StepProps } from '../stepProps.ts'
import {
	type AnswerChoice,
	besideQuestion,
	choiceOfKey,
	countSettled,
	nextOpen,
	settle,
} from './answering.ts'
import { leaveAt } from './comingBack.ts'
import { goToMeasure, measureAgain } from './measureAgain.ts'
import { type Asking, QuestionPanel } from './QuestionPanel.tsx'
import { HeldRow, QuestionRow } from './QuestionRow.tsx'
import { questionKeys } from './questionKeys.ts'
import { useAsked } from './useAsked.ts'
import type { Columns } from './useColumns.ts'
import { type Firmnesses, useFirmness } from './useFirmness.ts'
import { useInHand } from './useInHand.ts'

interface QuestionListProps extends StepProps {
	assessment: Assessment
	shelf: Shelf | undefined
	shelfTrouble: string
	wanted: string
	columns: Columns
}
/** What is done with the questions: answered, opened, left for a measure or an outcome. */
function useAnswers(props: QuestionListProps, questions: readonly AskedNow[], firm: Firmnesses) {
	const { draft, draftId, change, goTo, assessment, wanted } = props
	const { list, openId, setChosen, goToQuestion } = useInHand(props, wanted, questions)
	/** What is asked for before a question is settled: the fields of a change, or a reason. */
	const [asking, setAsking] = useState<Asking & { of: string }>()
	const take = (question: AskedNow, choice: AnswerChoice) => {
		if (choice === 'changed' || choice === 'set-aside')
			return setAsking({ choice, of: question.id })
		setAsking(undefined)
		change((now) => settle(now, question, choice))
		goToQuestion(nextOpen(draft, questions, question.id))
	}
	const outcomes = () => {
		leaveAt(draftId, 'gate')
		goTo('Flags')
	}
	/** To the measure that would make it surer; undefined where none would. */
	const againOf = (id: string): (() => void) | undefined => {
		const again = measureAgain(firm[id])
		return (
			again &&
			(() => {
				leaveAt(draftId, id)
				goToMeasure(again, goTo)
			})
		)
	}
	const letter = (key: string, id: string): (() => void) | undefined => {
		const question = questions.find((one) => one.id === id)
		const choice = question && choiceOfKey(key, question, assessment.prescription.gate)
		if (choice) return () => take(question, choice)
		if (key.toUpperCase() === 'M') return againOf(id)
		return key.toUpperCase() === 'O' && id === 'gate' ? outcomes : undefined
	}
	const pressed = questionKeys({
		openId,
		letter,
		open: setChosen,
		step: (id, by) => goToQuestion(besideQuestion(questions, id, by)),
		goOn: () => goToQuestion(nextOpen(draft, questions, openId ?? '') ?? openId),
		back: () => goToQuestion(openId),
	})
	return { list, openId, setChosen, asking, setAsking, take, outcomes, againOf, pressed }
}

export function QuestionList(props: QuestionListProps) {
	const { draft, earlier, assessment, columns } = props
	const firm = useFirmness(draft.visit, earlier, assessment)
	const questions = useAsked(draft, assessment)
	const answers = useAnswers(props, questions, firm)
	const { openId, asking, setAsking, take, outcomes, againOf, pressed } = answers
	if (questions.length === 0)
		return <Typography color="text.secondary">No question is to be settled yet.</Typography>
	const open = questions.find(({ id, held }) => id === openId && !held)
	const panel = open && (
		<QuestionPanel
			key={open.id}
			{...props}
			given={assessment}
			assessment={{ ...assessment, prescription: open.prescription }}
			question={open}
			firm={firm[open.id]}
			again={againOf(open.id)}
			outcomes={outcomes}
			asking={asking?.of === open.id ? asking : undefined}
			setAsking={(next) => setAsking(next && { ...next, of: open.id })}
			take={(choice) => take(open, choice)}
		/>
	)
	return (
		<>
			<Lines {...props} {...answers} questions={questions} firm={firm} panel={panel} />
			{columns !== 'one' && (
				<Box onKeyDown={pressed} sx={{ minWidth: 0 }}>
					{panel ?? (
						<Typography color="text.secondary" sx={{ pt: 1 }}>
							Choose a question to read and settle it.
						</Typography>
					)}
				</Box>
			)}
		</>
	)
}
interface LinesProps extends Pick<QuestionListProps, 'assessment' | 'draft' | 'columns'> {
	questions: readonly AskedNow[]
	firm: Firmnesses
	list: RefObject<HTMLOListElement | null>
	openId: string | undefined
	setChosen: (id: string) => void
	pressed: KeyboardEventHandler<HTMLElement>
	panel: ReactNode
}
function Lines(props: LinesProps) {
	const { assessment, draft, columns, questions, firm, list, openId, setChosen, pressed } = props
	const unfolds = columns === 'one'
	const inTab = openId || questions.find(({ held }) => !held)?.id
	return (
		<Box
			component="section"
			aria-label="Questions"
			onKeyDown={pressed}
			sx={{ alignSelf: 'stretch', minWidth: 0 }}
		>
			<Box sx={unfolds ? {} : stays}>
				<Box component="ol" ref={list} sx={rows}>
					{questions.map((question, at) =>
						question.held ? (
							<HeldRow key={question.id} {...{ question, assessment, number: at + 1 }} />
						) : (
							<QuestionRow
								key={question.id}
								{...{ question, assessment, draft, number: at + 1 }}
								firm={firm[question.id]}
								open={question.id === openId}
								inTab={question.id === inTab}
								lines={linesIn[columns]}
								setOpen={(isOpen) => setChosen(isOpen ? question.id : '')}
							>
								{unfolds && question.id === openId && props.panel}
							</QuestionRow>
						),
					)}
				</Box>
				<Foot draft={draft} questions={questions} />
			</Box>
		</Box>
	)
}
/** Where the lines are short they are three, so that all of what is proposed is read. */
const linesIn: Readonly<Record<Columns, number>> = { one: 4, two: 2, three: 3 }
/** It stays in sight while what stands beside it scrolls. */
const stays = {
	position: 'sticky',
	top: 'var(--walk-head)',
	maxHeight: 'calc(100vh - var(--walk-head) - var(--walk-foot))',
	overflowY: 'auto',
	'& > :last-child': { position: 'sticky', bottom: 0 },
} as const
/** What takes the focus stays above the foot line. */
const rows = {
	listStyle: 'none',
	m: 0,
	p: 0,
	'& :is(button, input, select, textarea)': { scrollMarginBottom: '5rem' },
	// a row is as wide as the list that scrolls: its ring stands inside
	'& button:focus-visible': { outlineOffset: '-3px' },
} as const
/** How many are settled; the letters stand on the answers. */
function Foot({
	draft,
	questions,
}: Pick<QuestionListProps, 'draft'> & { questions: readonly AskedNow[] }) {
	const { settled, asked } = countSettled(draft, questions)
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				columnGap: 2,
				alignItems: 'baseline',
				px: 1,
				py: 0.5,
				bgcolor: 'background.default',
				fontSize: '0.8125rem',
			}}
		>
			<Box component="span" sx={{ color: 'text.secondary' }}>
				Arrows or Enter: the next. Letters answer.
			</Box>
			<Box component="span" role="status" sx={{ ml: 'auto', fontWeight: 600 }}>
				{settled} of {asked} settled
			</Box>
		</Box>
	)
}
