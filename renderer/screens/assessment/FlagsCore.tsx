/** One core question: without an answer, or a reason for none, nothing-found is not said. */
import { Box, Button, TextField, Typography } from '@mui/material'
import { useId, useState } from 'react'
import type { CoreQuestion } from '../../../shared/engine/screening/core-questions.table.ts'
import { coreQuestionNames } from '../../../shared/engine/words/en/gate.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { complaintOf, groupOf, isUnasked, lineOf, setAsideIn, withSetAside } from './coreAsked.ts'
import { Question, QuestionLine } from './FlagsQuestion.tsx'
import { focusIn } from './flagsKeys.ts'
import { reasonTyped, withReasonTyped } from './flagsTyped.ts'
import type { AssessedProps, DraftProps } from './stepProps.ts'

type ReasonProps = { id: string } & DraftProps
const nameOf = (id: string): string => coreQuestionNames[id] ?? id
const putReason =
	({ id, change }: ReasonProps) =>
	(reason: string | undefined): void =>
		change((now) => ({
			...withReasonTyped(now, id, ''),
			visit: withSetAside(now.visit, id, reason),
		}))

/** Why a question was not asked: typed, or as it was kept. */
export function SetAside(props: ReasonProps) {
	const { id, draft, change } = props
	const why = reasonTyped(draft, id)
	const kept = setAsideIn(draft.visit, id)
	const put = putReason(props)
	if (kept)
		return (
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				<Typography variant="body2">Set aside: {kept.why}</Typography>
				<Button aria-label={`Ask after all: ${nameOf(id)}`} onClick={() => put(undefined)}>
					Ask after all
				</Button>
			</Box>
		)
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: 1, pb: 1 }}>
			<TextField
				size="small"
				label={`Why not asked: ${nameOf(id)}`}
				value={why}
				onChange={({ target }) => change((now) => withReasonTyped(now, id, target.value))}
				slotProps={{ htmlInput: { maxLength: 300, autoComplete: 'off' } }}
				sx={{ flex: '1 1 16rem' }}
			/>
			<Button disabled={why.trim() === ''} onClick={() => put(why.trim())}>
				Set aside
			</Button>
		</Box>
	)
}
/** What a question is answered with that is no yes or no: its group below. */
function ToGroup({ question, open }: { question: CoreQuestion; open: CoreProps['open'] }) {
	const complaint = complaintOf(question)
	const go = () => {
		if (complaint !== undefined) open(complaint)
		// once it is drawn
		requestAnimationFrame(() =>
			focusIn(document.querySelector(`[data-group="${groupOf(question)}"]`)),
		)
	}
	return (
		<Button aria-label={`Open its questions: ${nameOf(question.id)}`} onClick={go}>
			Open its questions
		</Button>
	)
}
interface CoreProps extends AssessedProps {
	question: CoreQuestion
	/** Chooses a complaint, so that its questions stand below. */
	open: (complaint: string) => void
}
export function Core({ question, open, draft, change, assessment }: CoreProps) {
	const { id } = question
	const line = lineOf(question, draft.visit)
	const unasked = isUnasked(assessment, id)
	const kept = setAsideIn(draft.visit, id) !== undefined
	const [asked, setAsked] = useState(reasonTyped(draft, id) !== '')
	const shown = kept || (asked && (unasked || reasonTyped(draft, id) !== ''))
	const box = useId()
	const end =
		unasked && !kept ? (
			<Button
				size="small"
				aria-expanded={shown}
				aria-controls={box}
				aria-label={`Say why not asked: ${nameOf(id)}`}
				onClick={() => setAsked(!asked)}
				sx={{ px: 1 }}
			>
				Say why
			</Button>
		) : null
	return (
		<Box data-core={id}>
			{line ? (
				<Question paths={[line]} draft={draft} change={change} marked={false} end={end} />
			) : (
				<QuestionLine words={capital(nameOf(id))} end={end}>
					{unasked ? <ToGroup question={question} open={open} /> : !kept && 'answered below'}
				</QuestionLine>
			)}
			<Box id={box}>{shown ? <SetAside id={id} draft={draft} change={change} /> : null}</Box>
		</Box>
	)
}
