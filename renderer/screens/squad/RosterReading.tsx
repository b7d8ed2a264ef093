/** How a roster was read, and what it does not tell: its columns, its dates, the sex of its players. */
import { Box, FormControlLabel, Radio, RadioGroup, TextField, Typography } from '@mui/material'
import type { RosterAnswers } from '../../../shared/desk/squad/roster-answers.ts'
import { columns, columnWords } from '../../../shared/desk/squad/roster-columns.table.ts'
import { type DayOrder, dayOrders } from '../../../shared/desk/squad/roster-dates.ts'
import { sexes } from '../../../shared/engine/visit/terms.ts'
import { Disclosure } from '../../parts/Disclosure.tsx'
import { counted } from '../../parts/Needs.tsx'
import type { Preview } from './useRoster.ts'

interface ReadingProps {
	preview: Preview
	answers: RosterAnswers
	say: (more: RosterAnswers) => void
}
export function RosterReading(props: ReadingProps) {
	return (
		<Box sx={{ display: 'grid', gap: 1.5 }}>
			<Columns {...props} />
			<Dates {...props} />
			<SexOfAll {...props} />
		</Box>
	)
}

/** The columns of the list, each with what it is read as; open where one is missing. */
function Columns({ preview, say, answers }: ReadingProps) {
	const { headings, missing, titleLines } = preview
	const read = headings.filter(({ column }) => column)
	const unreadCount = headings.length - read.length
	const said =
		`${counted(read.length, 'column')} of the list ${read.length === 1 ? 'is' : 'are'} read` +
		(unreadCount > 0 ? `, ${unreadCount} not` : '') +
		(titleLines > 0 ? `; the headings stand in row ${titleLines + 1}` : '')
	const open = missing.some((column) => column !== 'sex')
	return (
		<Disclosure
			key={String(open)}
			label="Columns"
			head={<Typography>{said}.</Typography>}
			openAtFirst={open}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, pt: 1 }}>
				{headings.map(({ place, title, column }) => (
					<TextField
						key={place}
						select
						size="small"
						sx={{ minWidth: 200 }}
						label={title || `Column ${place + 1}, without a heading`}
						value={column ?? 'unread'}
						onChange={({ target }) =>
							say({
								columns: { ...answers.columns, [String(place)]: asColumn(target.value) },
							})
						}
						slotProps={{ inputLabel: { shrink: true }, select: { native: true } }}
					>
						<option value="unread">not read</option>
						{columns.map((one) => (
							<option key={one} value={one}>
								{columnWords[one].says}
							</option>
						))}
					</TextField>
				))}
			</Box>
		</Disclosure>
	)
}
const asColumn = (value: string) => columns.find((column) => column === value) ?? 'unread'

const orderWords: Record<DayOrder, string> = {
	'day-first': 'Day first: 3/4 is 3 April',
	'month-first': 'Month first: 3/4 is 4 March',
}
/** What comes first in the dates, where it is not plain from the way they are written. */
function Dates({ preview: { dates }, say }: ReadingProps) {
	if (dates.open === 0) return null
	return (
		<Choice
			name="What comes first in the dates of this list?"
			says={
				dates.order === undefined
					? `${counted(dates.open, 'date')} can be read two ways.`
					: `Read as the row that tells it: ${dates.example ?? ''}. See the birth dates below.`
			}
			options={dayOrders.map((order) => [order, orderWords[order]])}
			value={dates.order}
			set={(dayOrder) => say({ dayOrder })}
		/>
	)
}
/** Asked once, where the list has no column for it. */
function SexOfAll({ preview: { missing }, answers, say }: ReadingProps) {
	if (!missing.includes('sex') && answers.sex === undefined) return null
	return (
		<Choice
			name="Sex of all players of this list"
			says="The list has no column for it."
			options={sexes.map((sex) => [sex, sex])}
			value={answers.sex}
			set={(sex) => say({ sex })}
		/>
	)
}
interface ChoiceProps<Value extends string> {
	name: string
	says: string
	options: readonly (readonly [Value, string])[]
	value: Value | undefined
	set: (value: Value) => void
}
function Choice<Value extends string>({ name, says, options, value, set }: ChoiceProps<Value>) {
	return (
		<RadioGroup aria-label={name} value={value ?? ''}>
			<Typography sx={{ fontWeight: 600 }}>{name}</Typography>
			<Typography color="textSecondary">{says}</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap' }}>
				{options.map(([one, words]) => (
					<FormControlLabel
						key={one}
						value={one}
						control={<Radio onChange={() => set(one)} />}
						label={words}
					/>
				))}
			</Box>
		</RadioGroup>
	)
}
