/** The questions asked of everybody: those before others, and those in private. */
import { Box, Button, Paper, TextField, Typography } from '@mui/material'
import { privateQuestionsOf } from '../../../shared/engine/screening/asked.ts'
import { askedAlways, restrictedNote } from '../../../shared/engine/screening/complaints.table.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { readPath, withValue } from '../../parts/draft-path.ts'
import { may } from '../../parts/roles.ts'
import { useHost } from '../../query.ts'
import { privateWords, Question } from './FlagsQuestion.tsx'
import type { DraftProps } from './stepProps.ts'

interface AskedProps extends DraftProps {
	heading: string
	says: string
	button: string
	paths: readonly string[]
	/** Asked above: the button answers them too. */
	above?: readonly string[]
}
function Asked({ heading, says, button, paths, above = [], draft, change }: AskedProps) {
	const unasked = [...above, ...paths].filter((path) => readPath(draft.visit, path) === undefined)
	return (
		<>
			<Box
				sx={{
					display: 'flex',
					flexWrap: 'wrap',
					justifyContent: 'space-between',
					alignItems: 'center',
					gap: 2,
				}}
			>
				<Typography variant="h2">{heading}</Typography>
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
			<Typography variant="body2" color="text.secondary">
				{says}
			</Typography>
			{paths.map((path) => (
				<Question key={path} paths={[path]} draft={draft} change={change} marked={false} />
			))}
		</>
	)
}
/** @param above those of them that stand among the core questions */
export const AskedOfEveryone = ({
	above,
	draft,
	change,
}: { above: readonly string[] } & DraftProps) => (
	<Paper variant="outlined" sx={{ p: 2 }}>
		<Asked
			heading="Asked of everyone"
			says="A question left alone counts as not asked. Keys y and n answer the one in focus."
			button="I asked them all: the rest are no"
			above={above}
			paths={askedAlways.filter((path) => !above.includes(path))}
			draft={draft}
			change={change}
		/>
	</Paper>
)
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
		<Paper variant="outlined" sx={{ p: 2, borderStyle: 'dashed' }}>
			<Asked
				heading="Asked in private"
				says={`${privateWords} Ask where nobody else hears it.`}
				button="Asked alone: the rest are no"
				paths={paths}
				draft={draft}
				change={change}
			/>
			{may(status.value?.person?.role).lead ? (
				<SafeguardingNote draft={draft} change={change} />
			) : null}
		</Paper>
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
