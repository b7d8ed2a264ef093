/** The questions asked of everybody: the core questions first, and those asked in private. */
import { Box, Button, Paper, TextField, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { privateQuestionsOf } from '../../../shared/engine/screening/asked.ts'
import { askedAlways, restrictedNote } from '../../../shared/engine/screening/complaints.table.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { may } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { coreOf, lineOf } from './coreAsked.ts'
import { Core, SetAside } from './FlagsCore.tsx'
import { privateWords, Question } from './FlagsQuestion.tsx'
import { reasonsBegun } from './flagsTyped.ts'
import type { AssessedProps, DraftProps } from './stepProps.ts'

interface AskedHeadProps extends DraftProps {
	heading: string
	says: string
	button: string
	/** What the button answers with no, where it was not asked. */
	paths: readonly string[]
}
function AskedHead({ heading, says, button, paths, draft, change }: AskedHeadProps) {
	const unasked = paths.filter((path) => readPath(draft.visit, path) === undefined)
	return (
		<>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				<Typography variant="h2" sx={{ flex: '1 1 auto' }}>
					{heading}
				</Typography>
				<Button
					variant="outlined"
					disabled={unasked.length === 0}
					onClick={() =>
						change((now) => unasked.reduce((next, path) => withValue(next, path, false), now))
					}
				>
					{button}
				</Button>
			</Box>
			<Typography variant="body2" color="text.secondary" sx={{ pb: 0.5 }}>
				{says}
			</Typography>
		</>
	)
}
function Sheet({ label, edge, children }: { label: string; edge?: 'dashed'; children: ReactNode }) {
	return (
		<Paper
			component="section"
			aria-label={label}
			variant="outlined"
			sx={{ px: 2, py: 1.5, ...(edge ? { borderStyle: edge } : {}) }}
		>
			{children}
		</Paper>
	)
}
/** @param open chooses a complaint, so that its questions stand below */
export function AskedOfEveryone({
	open,
	...props
}: { open: (complaint: string) => void } & AssessedProps) {
	const { draft, change } = props
	const core = coreOf(props)
	const lines = core.flatMap((question) => lineOf(question, draft.visit) ?? [])
	const others = askedAlways.filter((path) => !lines.includes(path))
	// a reason that was begun stays in sight where the question does not concern the player any more
	const begun = reasonsBegun(draft).filter((id) => !core.some((one) => one.id === id))
	return (
		<Sheet label="Core questions">
			<AskedHead
				heading="Asked of everyone"
				says="Keys y and n answer and go on. What is left alone counts as not asked."
				button="I asked them all: the rest are no"
				paths={[...lines, ...others]}
				draft={draft}
				change={change}
			/>
			<div data-answers="screening">
				{core.map((question) => (
					<Core key={question.id} question={question} open={open} {...props} />
				))}
				{begun.map((id) => (
					<SetAside key={id} id={id} draft={draft} change={change} />
				))}
				<PlainQuestions paths={others} draft={draft} change={change} />
			</div>
		</Sheet>
	)
}
/** A line for each, without a mark or an end of its own. */
function PlainQuestions({ paths, draft, change }: DraftProps & { paths: readonly string[] }) {
	return paths.map((path) => (
		<Question key={path} paths={[path]} draft={draft} change={change} marked={false} end={null} />
	))
}
/** Medicines, weight, periods and pregnancy; the safeguarding note for those who lead. */
export function AskedInPrivate({ draft, change }: DraftProps) {
	const { sex } = draft.visit.player
	const status = useHost('session.status', {})
	// what was answered stays on the screen, whatever sex was corrected meanwhile
	const answered = privateQuestionsOf('female').filter(
		(path) => readPath(draft.visit, path) !== undefined,
	)
	const paths = [...new Set([...privateQuestionsOf(sex), ...answered])]
	return (
		<Sheet label="Asked in private" edge="dashed">
			<AskedHead
				heading="Asked in private"
				says={`${privateWords} Ask where nobody else hears it.`}
				button="Asked alone: the rest are no"
				paths={paths}
				draft={draft}
				change={change}
			/>
			<PlainQuestions paths={paths} draft={draft} change={change} />
			{may(status.value?.person?.role).lead ? (
				<SafeguardingNote draft={draft} change={change} />
			) : null}
		</Sheet>
	)
}
function SafeguardingNote({ draft, change }: DraftProps) {
	const value = readPath(draft.visit, restrictedNote)
	return (
		<TextField
			fullWidth
			multiline
			minRows={2}
			label={fieldMeta(visitSchema, restrictedNote).title}
			helperText={
				'Seen here by clinicians and the owner only. In no report, letter, list or trail. Follow ' +
				'your local safeguarding procedure: this note informs nobody.'
			}
			value={typeof value === 'string' ? value : ''}
			onChange={({ target }) =>
				change((now) =>
					withValue(now, restrictedNote, target.value.trim() === '' ? undefined : target.value),
				)
			}
			slotProps={{
				htmlInput: { maxLength: 4000, 'data-path': restrictedNote, autoComplete: 'off' },
			}}
			sx={{ mt: 2 }}
		/>
	)
}
