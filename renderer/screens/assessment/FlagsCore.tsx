/** The core questions: without an answer, or a reason for none, nothing-found is not said. */
import { Box, Button, Paper, TextField, Typography } from '@mui/material'
import type { CoreQuestion } from '../../../shared/engine/screening/core-questions.table.ts'
import { coreQuestionsOf } from '../../../shared/engine/screening/core-questions.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { coreQuestionNames } from '../../../shared/engine/words/en/gate.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { readPath } from '../../parts/draft-path.ts'
import { Question } from './FlagsQuestion.tsx'
import { reasonsBegun, reasonTyped, withReasonTyped } from './flagsTyped.ts'
import { questionGroup } from './questions.ts'
import type { AssessedProps, DraftProps } from './stepProps.ts'

/** Which complaint opens the questions that belong to one. */
const complaintOf: Readonly<Record<string, string>> = {
	injury: 'twisted',
	'diabetic-foot': 'diabetes',
}

/** The core questions that concern this player, as far as the answers so far tell. */
export const coreOf = ({ draft: { visit }, assessment }: AssessedProps): CoreQuestion[] =>
	coreQuestionsOf({
		visit,
		ottawa: assessment?.screening.ottawa ?? {},
		protocol: clinicProtocol,
	})
/** Whether a path is answered on a line of its own, and not in a group. */
function isLine(path: string): boolean {
	const [, name = ''] = path.split('.')
	return path.split('.').length === 2 && !questionGroup(`screening.${name}`)
}
/**
 * The path of a question that is answered on a line of its own: one that is answered already before
 * the one that is asked first. Undefined where it is a group.
 */
export function lineOf({ paths }: CoreQuestion, visit: Visit): string | undefined {
	const [first] = paths
	if (!isLine(first)) return undefined
	return paths.find((path) => isLine(path) && readPath(visit, path) !== undefined) ?? first
}
const setAsideIn = ({ coreSetAside = [] }: Visit, id: string) =>
	coreSetAside.find(({ question }) => question === id)
const withSetAside = (visit: Visit, id: string, why: string | undefined): Visit => {
	const { coreSetAside = [], ...rest } = visit
	const others = coreSetAside.filter(({ question }) => question !== id)
	const next = why === undefined ? others : [...others, { question: id, why }]
	return next.length > 0 ? { ...rest, coreSetAside: next } : rest
}
function SetAside({ id, draft, change }: { id: string } & DraftProps) {
	const why = reasonTyped(draft, id)
	const kept = setAsideIn(draft.visit, id)
	const put = (reason: string | undefined) =>
		change((now) => ({
			...withReasonTyped(now, id, ''),
			visit: withSetAside(now.visit, id, reason),
		}))
	if (kept)
		return (
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				<Typography variant="body2">Set aside: {kept.why}</Typography>
				<Button
					aria-label={`Ask after all: ${coreQuestionNames[id]}`}
					onClick={() => put(undefined)}
				>
					Ask after all
				</Button>
			</Box>
		)
	return (
		<Disclosure
			label="Not asked: say why"
			name={`Not asked, say why: ${coreQuestionNames[id]}`}
			openAtFirst={why !== ''}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: 1 }}>
				<TextField
					size="small"
					label={`Why not asked: ${coreQuestionNames[id]}`}
					value={why}
					onChange={({ target }) => change((now) => withReasonTyped(now, id, target.value))}
					slotProps={{ htmlInput: { maxLength: 300, autoComplete: 'off' } }}
					sx={{ flex: '1 1 16rem' }}
				/>
				<Button disabled={why.trim() === ''} onClick={() => put(why.trim())}>
					Set aside
				</Button>
			</Box>
		</Disclosure>
	)
}
function Core(
	props: { question: CoreQuestion; open: (complaint: string) => void } & AssessedProps,
) {
	const { question, open, draft, change, assessment } = props
	const { id } = question
	const line = lineOf(question, draft.visit)
	const gate = assessment?.prescription?.gate
	const unasked =
		gate && [gate.person, gate.left, gate.right].some((part) => part.unasked.includes(id))
	const complaint = complaintOf[id]
	return (
		<Box>
			{line ? (
				<Question paths={[line]} draft={draft} change={change} marked={false} />
			) : (
				<Typography sx={{ py: 0.5 }}>
					{capital(coreQuestionNames[id] ?? id)}
					{unasked && complaint ? (
						<Button sx={{ ml: 1 }} onClick={() => open(complaint)}>
							Open its questions
						</Button>
					) : null}
				</Typography>
			)}
			{unasked || setAsideIn(draft.visit, id) || reasonTyped(draft, id) !== '' ? (
				<SetAside id={id} draft={draft} change={change} />
			) : null}
		</Box>
	)
}
/** @param open chooses a complaint, so that its questions stand below */
export function CoreQuestions({
	open,
	...props
}: { open: (complaint: string) => void } & AssessedProps) {
	const core = coreOf(props)
	// a reason that was begun stays in sight where the question does not concern the player any more
	const begun = reasonsBegun(props.draft).filter((id) => !core.some((one) => one.id === id))
	return (
		<Paper component="section" aria-label="Core questions" variant="outlined" sx={{ p: 2 }}>
			<Typography variant="h2">Core questions</Typography>
			<Typography variant="body2" color="text.secondary">
				Each is answered, or set aside with a reason: until then nothing is established.
			</Typography>
			{core.map((question) => (
				<Core key={question.id} question={question} open={open} {...props} />
			))}
			{begun.map((id) => (
				<SetAside key={id} id={id} draft={props.draft} change={props.change} />
			))}
		</Paper>
	)
}
