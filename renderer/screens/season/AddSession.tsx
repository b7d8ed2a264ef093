/** A session beside the weekly pattern, such as a final. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { weekdayName } from '../../../shared/engine/plain/days.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { newSessionId, outsideSeason, readSession, withSession } from './edits.ts'
import { Choice, Day, Text } from './fields.tsx'
import { type Edit, singleKinds, surfaceOptions } from './options.ts'
import { useEntries } from './useEntries.ts'

const empty = {
	date: '',
	start: '',
	minutes: '90',
	kind: 'match',
	surface: '',
	ground: '',
	title: '',
}
/** @param date the day that it is asked for, ISO */
export function AddSession({ season, change, date: asked }: Edit & { date: string }) {
	const start = { ...empty, date: asked }
	const { entries, setEntries, says, setSays, of } = useEntries(start)
	const submit = () => {
		const read = readSession(entries)
		if (!read.ok) return setSays(read.says)
		const { date, kind } = read.value
		const outside = outsideSeason(season, date)
		if (outside) return setSays(outside)
		change(
			withSession(season, { ...read.value, id: newSessionId(season, date) }),
			`Added: ${weekdayName(date)} ${dayInWords(date)}, ${kind}.`,
		)
		setEntries(start)
	}
	return (
		<Stack
			component="form"
			noValidate
			aria-label="Further session"
			spacing={1}
			sx={{ mt: 1.5 }}
			onSubmit={(event) => {
				event.preventDefault()
				submit()
			}}
		>
			<Typography variant="h3">Add a session, such as a final</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(9rem, 100%), 1fr))',
					gap: 1,
					alignItems: 'start',
					'& > *': { minWidth: 0 },
				}}
			>
				<Day label="Date" name="Date of the further session" {...of('date')} hint=" " />
				<Text label="Start" {...of('start')} />
				<Text label="Minutes" {...of('minutes')} />
				<Choice label="Kind" {...of('kind')} required options={singleKinds} />
				<Choice label="Surface" {...of('surface')} options={surfaceOptions} />
				<Text label="Title" {...of('title')} />
			</Box>
			<Trouble says={says} />
			<Box>
				<Button type="submit" variant="outlined">
					Add session
				</Button>
			</Box>
		</Stack>
	)
}
