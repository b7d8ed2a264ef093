/** What the host read of a roster: its problems, its players, and who may be on record already. */
import { Alert, Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import { purposes } from '../../../shared/desk/records/consent.ts'
import { dayInWords } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { Rows } from '../../parts/panels.tsx'
import { peopleOpen, RosterPeople } from './RosterPeople.tsx'
import { RosterReading } from './RosterReading.tsx'
import { columnSays, RosterRepairs } from './RosterRepairs.tsx'
import type { Preview, RosterState } from './useRoster.ts'

type RosterRow = Preview['rows'][number]

const isAsked = ({ known, alike }: RosterRow): boolean => known.length + alike.length > 0
/** Why nothing of the roster can be taken in yet; empty where it can. */
function waitsFor(
	preview: Preview,
	{ same, people }: Pick<RosterState, 'same' | 'people'>,
): string {
	const { rows, bad, problems } = preview
	if (rows.length === 0)
		return problems.length > bad.length || bad.length > 0
			? 'Say above how the list is to be read.'
			: 'There is no player in the roster.'
	const open = rows.filter((row) => isAsked(row) && same[String(row.row)] === undefined)
	if (open.length > 0)
		return `Answer first who is on record already: ${open.map((row) => row.name).join(', ')}.`
	const nobody = peopleOpen(preview, people)
	return nobody.length > 0 ? `Name first whom consents are for: ${nobody.join(', ')}.` : ''
}
interface RosterPreviewProps {
	roster: RosterState
	preview: Preview
	/** Whether players are added to a day that stands. */
	adding: boolean
}
export function RosterPreview({ roster, preview, adding }: RosterPreviewProps) {
	const { same, answer, action } = roster
	const { bad, problems, rows } = preview
	const rowsBad = new Set(bad.map(({ row }) => row))
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<Typography role="status" sx={{ fontWeight: 600 }}>
				{counted(rows.length, 'player')} can be taken in, {counted(problems.length, 'problem')}.
			</Typography>
			<RosterReading preview={preview} answers={roster.answers} say={roster.say} />
			<OfTheList problems={problems.filter(({ row }) => !rowsBad.has(row))} />
			<RosterRepairs
				preview={preview}
				repair={roster.repair}
				leaveOut={roster.leaveOut}
				busy={action.busy}
			/>
			<Players rows={rows} hasNumbers={roster.purpose === 'day'} />
			{rows.filter(isAsked).map((row) => (
				<OnRecord
					key={row.row}
					row={row}
					value={same[String(row.row)] ?? ''}
					set={(who) => answer(row.row, who)}
				/>
			))}
			<RosterPeople preview={preview} people={roster.people} setPeople={roster.setPeople} />
			<Take
				waits={waitsFor(preview, roster)}
				label={takeWords(preview, roster, adding)}
				roster={roster}
				isMain={!adding}
			/>
		</Box>
	)
}
/** Problems of the list as a whole: nothing of it can be read before they are mended. */
function OfTheList({ problems }: Pick<Preview, 'problems'>) {
	if (problems.length === 0) return null
	return (
		<Alert severity="error" role="alert">
			{problems.map(({ row, column, message }) => (
				<Typography key={`${row} ${column} ${message}`}>
					Row {row}, {columnSays(column)}: {message}.
				</Typography>
			))}
		</Alert>
	)
}
function takeWords(
	{ rows, bad }: Preview,
	{ same, purpose }: Pick<RosterState, 'same' | 'purpose'>,
	adding: boolean,
): string {
	const players = rows.filter(({ row }) => same[String(row)] !== 'leave-out').length
	if (bad.length > 0) return `Take in ${counted(players, 'player')} without ${bad.length} more`
	if (purpose === 'players') return `Put ${counted(players, 'player')} on record`
	return adding ? 'Add to the board' : 'Import and open the board'
}
interface TakeProps {
	waits: string
	label: string
	roster: RosterState
	isMain: boolean
}
function Take({ waits, label, roster: { action, take }, isMain }: TakeProps) {
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
			<Button
				variant={isMain ? 'contained' : 'outlined'}
				disabled={action.busy || waits !== ''}
				onClick={take}
			>
				{label}
			</Button>
			<Typography variant="body2" color="textSecondary">
				{waits}
			</Typography>
		</Box>
	)
}

interface PlayersProps {
	rows: readonly RosterRow[]
	/** the numbers of a screening day */
	hasNumbers: boolean
}
function Players({ rows, hasNumbers }: PlayersProps) {
	return (
		<Rows
			label="Players of the roster"
			heads={['Row', ...(hasNumbers ? ['Number'] : []), 'Player', 'Born', 'Guardian', 'Consents']}
			figures={['Row', 'Number']}
			empty="No row can be taken in yet."
			rows={rows.map((row) => ({
				key: String(row.row),
				cells: [
					row.row,
					...(hasNumbers ? [row.isNumbered ? `${row.number} (given here)` : row.number] : []),
					row.name,
					dayInWords(row.birthDate),
					row.guardian ?? '',
					row.consents.map((purpose) => purposes[purpose].says).join('; '),
				],
			}))}
		/>
	)
}

const orTwin = (why: 'same-person' | 'twin') => (why === 'twin' ? ' (or a twin: check)' : '')

interface OnRecordProps {
	row: RosterRow
	value: string
	set: (who: string) => void
}
function OnRecord({ row, value, set }: OnRecordProps) {
	const option = (who: string, label: string) => (
		<FormControlLabel key={who} value={who} control={<Radio />} label={label} />
	)
	const { known, alike } = row
	return (
		<RadioGroup aria-label={`Who is ${row.name}`} value={value} onChange={(_, who) => set(who)}>
			<Typography sx={{ fontWeight: 600 }}>
				{row.name}, born {dayInWords(row.birthDate)}:{' '}
				{known.length > 0 ? 'on record already?' : 'in the list twice?'}
			</Typography>
			{alike.map((other) => (
				<Typography key={other.row} color="textSecondary">
					Row {other.row} is {other.name}, born {dayInWords(other.birthDate)}
					{orTwin(other.why)}.
				</Typography>
			))}
			{known.map(({ playerId, name, birthDate, why }) =>
				option(playerId, `Yes, this is ${name}, born ${dayInWords(birthDate)}${orTwin(why)}`),
			)}
			{option('new', 'No, a new player')}
			{alike.length > 0 && option('leave-out', `The same: leave out row ${row.row}`)}
		</RadioGroup>
	)
}
