/** The question in hand: its answers, proposal, fields, the reasons beneath, caveats as footnotes. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useEffect, useRef } from 'react'
import type { Firm } from '../../../../shared/engine/firmness/firmness.ts'
import { answerTo } from '../../../../shared/engine/prescription/answers.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import {
	type AnswerChoice,
	choicesFor,
	keyOf,
	lastAnswer,
	letStand,
	putAside,
	stateOf,
	takeBack,
} from './answering.ts'
import { ChangeFields, hasFields } from './ChangeFields.tsx'
import { Findings } from './Findings.tsx'
import { Proposal } from './Proposal.tsx'
import { changedByWords, choiceNames, firmnessWords } from './proposalWords.ts'
import { panelId } from './QuestionRow.tsx'
import { kindOf, titleOfQuestion } from './questionTitles.ts'
import type { AskedProps } from './stepTypes.ts'
import { Words } from './Words.tsx'

/** What is asked for before a question is settled; asked for anew, it takes the focus again. */
export interface Asking {
	choice: AnswerChoice
}
interface PanelProps extends AskedProps {
	firm: Firm | undefined
	/** To the measure that would make it surer; undefined where none would. */
	again: (() => void) | undefined
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
	const { question, draft, asking } = props
	const answer = answerTo(draft.decisions, question)
	const inPlace = !hasFields(kindOf(question.id))
	const panel = useRef<HTMLDivElement>(null)
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
	// read from its beginning, wherever the one before was left
	useEffect(() => {
		if (panel.current && isAbove(panel.current)) panel.current.scrollIntoView({ block: 'start' })
	}, [])
	const changing =
		asking?.choice === 'changed' || (asking === undefined && answer?.choice === 'changed')
	return (
		<Stack
			ref={panel}
			id={panelId}
			role="region"
			aria-label={titleOfQuestion(question.id)}
			spacing={1.5}
			sx={{ px: 1, pt: 0.5, pb: 2, scrollMarginTop: 'var(--walk-head)' }}
		>
			<Box>
				<Typography variant="h2" component="h2" sx={{ fontSize: '1.125rem' }}>
					{titleOfQuestion(question.id)}
				</Typography>
				<Typography sx={{ fontSize: '1.0625rem' }}>{question.says}</Typography>
				<Turned question={question} />
			</Box>
			<Acts {...props} />
			<Again {...props} />
			<Overtaken {...props} />
			<Box ref={why} sx={whereNeeded}>
				<WhySetAside {...props} />
			</Box>
			{changing && !inPlace && (
				<Box ref={fields} data-own-keys="change">
					<ChangeFields {...props} />
				</Box>
			)}
			<Box ref={inPlace ? fields : undefined} sx={whereNeeded}>
				<Proposal {...props} />
			</Box>
			<Findings {...props} />
		</Stack>
	)
}
/** Begins above what is in sight. */
const isAbove = (element: HTMLElement): boolean =>
	element.getBoundingClientRect().top < Number.parseFloat(getComputedStyle(element).scrollMarginTop)
/** Said where the answers of others made another proposal of it. */
function Turned({ question }: Pick<PanelProps, 'question'>) {
	const changed = changedByWords(question)
	if (!changed) return null
	return (
		<Typography variant="body2" color="text.secondary">
			{capital(changed)}. Before: {question.before}
		</Typography>
	)
}
/** How surely it stands, and the measure that would make it surer. */
function Again({ firm, again }: PanelProps) {
	const words = firmnessWords(firm)
	if (!words) return null
	if (!again)
		return (
			<Typography variant="body2" color="text.secondary">
				{capital(words)}
			</Typography>
		)
	return (
		<Button
			variant="text"
			aria-keyshortcuts="M"
			onClick={again}
			sx={{ alignSelf: 'flex-start', textAlign: 'left', color: 'warning.main' }}
		>
			<Key of="M" />
			{capital(words)}
		</Button>
	)
}
const Key = ({ of }: { of: string }) => (
	<Box component="kbd" aria-hidden sx={{ font: 'inherit', opacity: 0.7, mr: 1 }}>
		{of}
	</Box>
)

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
					<Key of={keyOf(choice)} />
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
