/** What the host read of a roster: its problems, its players, and who may be on record already. */
import { Alert, Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { dayInWords } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { Rows } from '../../parts/panels.tsx'

type Preview = OutputOf<'squad.previewRoster'>
type RosterRow = Preview['rows'][number]
type Known = RosterRow['known'][number]
/** By row of the roster: the id of the player who it is, or 'new'. */
export type Answers = Record<string, string>

/** 'birthDate' as 'birth date', as the heading of the list has it. */
const columnWords = (column: string) =>
	column
		.replace(/([A-Z])/g, ' $1')
		.replaceAll('.', ' ')
		.toLowerCase()

/** Why the roster cannot be taken in yet; empty where it can. */
function waitsFor({ problems, rows }: Preview, same: Answers): string {
	if (problems.length > 0) return 'Correct the rows above and look at the roster again.'
	if (rows.length === 0) return 'There is no player in the roster.'
	const open = rows.filter((row) => row.known.length > 0 && same[String(row.row)] === undefined)
	if (open.length === 0) return ''
	return `Answer first who is on record already: ${open.map((row) => row.name).join(', ')}.`
}

interface RosterPreviewProps {
	preview: Preview
	same: Answers
	answer: (row: number, who: string) => void
	busy: boolean
	/** Whether players are added to a day that stands. */
	adding: boolean
	take: () => void
}
export function RosterPreview(props: RosterPreviewProps) {
	const { preview, same, answer, busy, adding, take } = props
	const waits = waitsFor(preview, same)
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<Typography role="status" sx={{ fontWeight: 600 }}>
				{counted(preview.rows.length, 'player')} can be taken in,{' '}
				{counted(preview.problems.length, 'problem')}.
			</Typography>
			{preview.problems.length > 0 && (
				<Alert severity="error" role="alert">
					{preview.problems.map(({ row, column, message }) => (
						<Typography key={`${row} ${column} ${message}`}>
							Row {row}, {columnWords(column)}: {message}.
						</Typography>
					))}
				</Alert>
			)}
			<Players rows={preview.rows} />
			{preview.rows
				.filter((row) => row.known.length > 0)
				.map((row) => (
					<OnRecord
						key={row.row}
						row={row}
						value={same[String(row.row)] ?? ''}
						set={(who) => answer(row.row, who)}
					/>
				))}
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
				<Button
					variant={adding ? 'outlined' : 'contained'}
					disabled={busy || waits !== ''}
					onClick={take}
				>
					{adding ? 'Add to the board' : 'Import and open the board'}
				</Button>
				<Typography variant="body2" color="textSecondary">
					{waits}
				</Typography>
			</Box>
		</Box>
	)
}

function Players({ rows }: { rows: readonly RosterRow[] }) {
	return (
		<Rows
			label="Players of the roster"
			heads={['Row', 'Number', 'Player', 'Born', 'Guardian', 'Consents']}
			empty="No good row."
			rows={rows.map((row) => ({
				key: String(row.row),
				cells: [
					row.row,
					row.number,
					row.name,
					dayInWords(row.birthDate),
					row.guardian ?? '',
					row.consents.join(', '),
				],
			}))}
		/>
	)
}

const knownWords = ({ name, birthDate, why }: Known): string =>
	`Yes, this is ${name}, born ${dayInWords(birthDate)}` +
	(why === 'twin' ? ' (or a twin: check)' : '')

interface OnRecordProps {
	row: RosterRow
	value: string
	set: (who: string) => void
}
function OnRecord({ row, value, set }: OnRecordProps) {
	return (
		<RadioGroup aria-label={`Who is ${row.name}`} value={value} onChange={(_, who) => set(who)}>
			<Typography sx={{ fontWeight: 600 }}>
				{row.name}, born {dayInWords(row.birthDate)}: on record already?
			</Typography>
			{row.known.map((known) => (
				<FormControlLabel
					key={known.playerId}
					value={known.playerId}
					control={<Radio />}
					label={knownWords(known)}
				/>
			))}
			<FormControlLabel value="new" control={<Radio />} label="No, a new player" />
		</RadioGroup>
	)
}
