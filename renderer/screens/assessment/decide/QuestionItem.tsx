/** One question: a line with its proposal, and what stands under it while it is open. */
import { Box, ButtonBase, Typography } from '@mui/material'
import { type KeyboardEvent, useEffect, useId, useState } from 'react'
import type { Assessment, Question } from '../../../../shared/engine/findings/assessment.ts'
import type { Firm } from '../../../../shared/engine/firmness/firmness.ts'
import { answerTo } from '../../../../shared/engine/prescription/answers.ts'
import { type AnswerChoice, choiceOfKey, settle, stateOf } from './answering.ts'
import { heldLine } from './heldWords.ts'
import { firmnessWords, stateWords } from './proposalWords.ts'
import { type Asking, QuestionPanel } from './QuestionPanel.tsx'
import { titleOfQuestion } from './questionTitles.ts'
import type { AskedProps } from './stepTypes.ts'

const columns = '2rem minmax(7rem, 9.5rem) minmax(0, 1fr) minmax(6.5rem, auto)'
interface HeldProps {
	question: Question
	assessment: Assessment
	number: number
}
/** A held question proposes nothing and asks nothing. */
export function HeldQuestion({ question, assessment, number }: HeldProps) {
	return (
		<Box
			component="li"
			data-state="held"
			sx={{
				display: 'grid',
				gridTemplateColumns: columns,
				gap: 1.5,
				px: 1,
				py: 1.25,
				borderBottom: 1,
				borderColor: 'divider',
				color: 'text.secondary',
			}}
		>
			<span>{number}</span>
			<span>{titleOfQuestion(question.id)}</span>
			<Typography component="span" sx={{ gridColumn: '3 / -1' }}>
				{heldLine(assessment, question)}
			</Typography>
		</Box>
	)
}

interface QuestionItemProps extends AskedProps {
	number: number
	/** Undefined where it was not tried, or not yet. */
	firm: Firm | undefined
	open: boolean
	setOpen: (open: boolean) => void
	/** On to the next question that is not settled. */
	goOn: () => void
	/** To the question after or before this one. */
	step: (by: 1 | -1) => void
}
/** What is typed into, or has keys of its own. */
const hasOwnKeys = (target: EventTarget): boolean =>
	target instanceof HTMLElement &&
	target.closest('input, select, textarea, [contenteditable=true], [data-own-keys]') !== null

export function QuestionItem(props: QuestionItemProps) {
	const { question, assessment, change, open, setOpen, goOn, step } = props
	const id = useId()
	/** What is asked for before the question is settled: the fields of a change, or a reason. */
	const [asking, setAsking] = useState<Asking>()
	useEffect(() => {
		if (!open) setAsking(undefined)
	}, [open])
	const take = (choice: AnswerChoice) => {
		if (choice === 'changed' || choice === 'set-aside') return setAsking({ choice })
		setAsking(undefined)
		change((now) => settle(now, question, choice))
		goOn()
	}
	/** What a key does here; undefined where it is not for this question. */
	const calledFor = (key: string, onRow: boolean): (() => void) | undefined => {
		const choice = choiceOfKey(key, question, assessment.prescription.gate)
		// what was not looked at is not settled by a key: it opens first
		if (choice) return open ? () => take(choice) : () => setOpen(true)
		if (!onRow) return undefined
		if (key === 'ArrowUp') return () => step(-1)
		return key === 'ArrowDown' || (key === 'Enter' && open) ? () => step(1) : undefined
	}
	const pressed = (event: KeyboardEvent<HTMLElement>) => {
		if (event.ctrlKey || event.altKey || event.metaKey || hasOwnKeys(event.target)) return
		const onRow = event.target instanceof HTMLElement && 'question' in event.target.dataset
		const run = calledFor(event.key, onRow)
		if (!run) return
		run()
		event.preventDefault()
		event.stopPropagation()
	}
	return (
		<Box component="li" onKeyDown={pressed} sx={{ borderBottom: 1, borderColor: 'divider' }}>
			<Row {...props} panelId={id} />
			{open && (
				<Box id={id} role="region" aria-label={titleOfQuestion(question.id)} sx={{ px: 1, pb: 2 }}>
					<QuestionPanel {...props} asking={asking} setAsking={setAsking} take={take} />
				</Box>
			)}
		</Box>
	)
}

function Row(props: QuestionItemProps & { panelId: string }) {
	const { question, draft, number, firm, open, setOpen, panelId } = props
	const state = stateOf(draft, question)
	const firmness = firmnessWords(firm)
	const settled = state === 'settled'
	return (
		<ButtonBase
			data-question={question.id}
			data-state={state}
			aria-expanded={open}
			aria-controls={open ? panelId : undefined}
			onClick={() => setOpen(!open)}
			sx={{
				display: 'grid',
				gridTemplateColumns: columns,
				gap: 1.5,
				width: '100%',
				minHeight: 44,
				px: 1,
				py: 1.25,
				textAlign: 'left',
				font: 'inherit',
				alignItems: 'baseline',
				scrollMarginTop: 16,
				...(open ? { bgcolor: 'action.selected' } : {}),
			}}
		>
			<Box component="span" sx={{ color: 'text.secondary', fontVariantNumeric: 'tabular-nums' }}>
				{number}
			</Box>
			<Box component="span" sx={{ fontWeight: 600 }}>
				{titleOfQuestion(question.id)}
			</Box>
			<Box component="span">
				{question.says}
				{firmness && (
					<Box component="span" sx={{ color: 'text.secondary', ml: 1.5 }}>
						{firmness}
					</Box>
				)}
			</Box>
			<Box
				component="span"
				sx={{
					textAlign: 'right',
					fontWeight: settled ? 400 : 600,
					color: settled
						? 'text.secondary'
						: state === 'overtaken'
							? 'warning.main'
							: 'primary.main',
				}}
			>
				{stateWords(state, answerTo(draft.decisions, question))}
			</Box>
		</ButtonBase>
	)
}
