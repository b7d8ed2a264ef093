/** What stands under an open question: the answers, the proposal, its fields, its findings. */
import { Alert, Box, Button, Stack } from '@mui/material'
import { useEffect, useRef } from 'react'
import { answerTo } from '../../../../shared/engine/prescription/answers.ts'
import {
	type AnswerChoice,
	choicesFor,
	findingsIn,
	keyOf,
	lastAnswer,
	letStand,
	putAside,
	stateOf,
	takeBack,
} from './answering.ts'
import { ChangeFields, hasFields } from './ChangeFields.tsx'
import { FindingLine } from './FindingLine.tsx'
import { Proposal } from './Proposal.tsx'
import { choiceNames } from './proposalWords.ts'
import { kindOf, titleOfQuestion } from './questionTitles.ts'
import type { AskedProps } from './stepTypes.ts'
import { Words } from './Words.tsx'

/** What is asked for before a question is settled; asked for anew, it takes the focus again. */
export interface Asking {
	choice: AnswerChoice
}
interface PanelProps extends AskedProps {
	asking: Asking | undefined
	setAsking: (asking: Asking | undefined) => void
	take: (choice: AnswerChoice) => void
}
/** Takes no room while it is empty. */
const whereNeeded = { '&:empty': { display: 'none' } } as const
/** What is changed where it is shown. */
const firstAct = 'input[type=checkbox], [role=group] button'
const firstField = 'input:not([type=hidden]), select, textarea, button'

export function QuestionPanel(props: PanelProps) {
	const { question, assessment, draft, change, asking } = props
	const answer = answerTo(draft.decisions, question)
	const inPlace = !hasFields(kindOf(question.id))
	const fields = useRef<HTMLDivElement>(null)
	const why = useRef<HTMLDivElement>(null)
	useEffect(() => {
		const box =
			asking?.choice === 'changed'
				? fields.current
				: asking?.choice === 'set-aside'
					? why.current
					: null
		const field = inPlace && box?.querySelector<HTMLElement>(firstAct)
		;(field || box?.querySelector<HTMLElement>(firstField))?.focus()
	}, [asking, inPlace])
	const changing =
		asking?.choice === 'changed' || (asking === undefined && answer?.choice === 'changed')
	return (
		<Stack spacing={2} sx={{ pt: 1 }}>
			<Acts {...props} />
			<Overtaken {...props} />
			<Box ref={why} sx={whereNeeded}>
				<WhySetAside {...props} />
			</Box>
			<Box ref={inPlace ? fields : undefined} sx={whereNeeded}>
				<Proposal {...props} />
			</Box>
			{changing && !inPlace && (
				<Box ref={fields} data-own-keys="">
					<ChangeFields {...props} />
				</Box>
			)}
			<Stack component="ul" sx={{ m: 0, p: 0, listStyle: 'none' }} aria-label="Findings behind it">
				{findingsIn(question, assessment).map((finding) => (
					<FindingLine key={finding.id} finding={finding} draft={draft} change={change} />
				))}
			</Stack>
		</Stack>
	)
}

/** The answers that a question may be given. */
function Acts({ question, assessment, draft, change, asking, setAsking, take }: PanelProps) {
	const answer = answerTo(draft.decisions, question)
	const now = asking?.choice ?? answer?.choice
	return (
		<Stack
			direction="row"
			role="group"
			aria-label={`Answer: ${titleOfQuestion(question.id)}`}
			useFlexGap
			sx={{ gap: 1, flexWrap: 'wrap' }}
		>
			{choicesFor(question, assessment.prescription.gate).map((choice) => (
				<Button
					key={choice}
					variant={choice === now ? 'contained' : 'outlined'}
					aria-pressed={choice === now}
					aria-keyshortcuts={keyOf(choice)}
					onClick={() => take(choice)}
				>
					<Box component="kbd" aria-hidden sx={{ font: 'inherit', opacity: 0.7, mr: 1 }}>
						{keyOf(choice)}
					</Box>
					{choiceNames[choice]}
				</Button>
			))}
			{(answer || asking) && (
				<Button
					onClick={() => {
						setAsking(undefined)
						change((now) => takeBack(now, question))
					}}
				>
					Take back
				</Button>
			)}
		</Stack>
	)
}

/** Said where something else is proposed than when the question was answered. */
function Overtaken({ question, draft, change }: PanelProps) {
	if (stateOf(draft, question) !== 'overtaken') return null
	const last = lastAnswer(draft.decisions, question)
	const own = last?.choice === 'changed' || last?.choice === 'set-aside'
	return (
		<Alert
			severity="warning"
			role="note"
			action={
				own ? (
					<Button color="inherit" onClick={() => change((now) => letStand(now, question))}>
						Let my answer stand
					</Button>
				) : undefined
			}
		>
			Something else is proposed than when you answered
			{last ? ` “${choiceNames[last.choice].toLowerCase()}”` : ''}. Answer again.
			{last?.why ? ` Your reason was: “${last.why}”.` : ''}
		</Alert>
	)
}

function WhySetAside({ question, draft, change, asking }: PanelProps) {
	const answer = answerTo(draft.decisions, question)
	const isAside = answer?.choice === 'set-aside'
	if (asking?.choice !== 'set-aside' && !(asking === undefined && isAside)) return null
	return (
		<Words
			label="Why it is set aside"
			lines
			max={500}
			required
			value={isAside ? (answer.why ?? '') : ''}
			error={!isAside}
			hint={isAside ? '' : 'Say why: without a reason the question stays open.'}
			set={(text) => change((now) => putAside(now, question, text))}
		/>
	)
}
