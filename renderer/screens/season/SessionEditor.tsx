/** One session opened: moved, called off, pinned, or as in the weekly pattern again. */
import { Box, Button, Typography } from '@mui/material'
import type { FormEvent } from 'react'
import { weekdayName } from '../../../shared/engine/plain/days.ts'
import type { Season, Session } from '../../../shared/engine/visit/visit.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import {
	type Line,
	type Listed,
	outsideSeason,
	readSession,
	withoutSession,
	withSession,
} from './edits.ts'
import { Choice, Day, Text } from './fields.tsx'
import type { Pairs } from './gridWords.ts'
import { type Edit, groundOptions, type Option, surfaceOptions } from './options.ts'
import { useEntries } from './useEntries.ts'

const takesPlace: Option[] = [
	['cancelled', 'no: rained off or called off'],
	['bye', 'no: bye'],
	['injured', 'no: injured'],
]
const entriesOf = (session: Listed): Record<string, string> => ({
	date: session.date,
	start: session.start ?? '',
	minutes: String(session.minutes),
	surface: session.surface,
	ground: session.ground ?? '',
	status: session.status ?? '',
	pinned: session.pinned ?? '',
	worn: session.worn ?? '',
})
/** What the form does not ask for stays as it is; what it asks for and was emptied goes. */
function changed(session: Listed, read: Session): Listed {
	const { date, start, minutes, surface, ground, status, pinned, worn, ...kept } = session
	return { ...kept, ...read, id: session.id }
}
const isOfPattern = ({ pattern = [] }: Season, { id }: Listed): boolean =>
	pattern.some((row) => id === `${row.id}:${id.slice(-10)}`)

interface EditorProps extends Edit {
	line: Line
	pairs: Pairs
	done: () => void
}
export function SessionEditor(props: EditorProps) {
	const { line, season, change, done } = props
	const { session } = line
	const form = useEntries(() => entriesOf(session))
	const submit = () => {
		const read = readSession({ kind: session.kind, ...form.entries })
		if (!read.ok) return form.setSays(read.says)
		const { date } = read.value
		const outside = outsideSeason(season, date)
		if (outside) return form.setSays(outside)
		change(
			withSession(season, changed(session, read.value)),
			`Changed: ${weekdayName(date)} ${dayInWords(date)}, ${session.kind}.`,
		)
		done()
	}
	return (
		<Box
			component="form"
			noValidate
			aria-label="One session"
			onSubmit={(event: FormEvent) => {
				event.preventDefault()
				submit()
			}}
			sx={{ mt: 1.5 }}
		>
			<Typography variant="h3">Change the session</Typography>
			<Fields {...props} of={form.of} />
			<Trouble says={form.says} />
			<Acts {...props} />
		</Box>
	)
}

type FormOf = ReturnType<typeof useEntries>['of']
function Fields({ line, pairs, of }: EditorProps & { of: FormOf }) {
	const options = pairs.map(({ id, letter, name }): Option => [id, `${letter}: ${name}`])
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(9rem, 100%), 1fr))',
				gap: 1.25,
				mt: 1,
				alignItems: 'start',
			}}
		>
			<Choice label="Takes place" {...of('status')} none="yes" options={takesPlace} />
			{line.past ? (
				<Choice label="Worn" {...of('worn')} none="as planned" options={options} />
			) : (
				<Choice label="Pinned pair" {...of('pinned')} none="none" options={options} />
			)}
			<Choice label="Surface" {...of('surface')} options={surfaceOptions} required />
			<Choice label="Ground" {...of('ground')} options={groundOptions} none="usual (dry)" />
			<Day label="Date" name="Date of the session" {...of('date')} hint="Move it to another day" />
			<Text label="Start" {...of('start')} />
			<Text label="Minutes" {...of('minutes')} />
		</Box>
	)
}

function Acts({ line: { session }, season, change, done }: EditorProps) {
	const ofPattern = isOfPattern(season, session)
	/** It stands in the season by itself, before the weekly pattern's. */
	const written = (season.sessions ?? []).some(({ id }) => id === session.id)
	const takeOut = () => {
		const says = ofPattern
			? 'The session is as in the weekly pattern again.'
			: 'The session was taken out.'
		change(withoutSession(season, session.id), says)
		done()
	}
	return (
		<Box sx={{ display: 'flex', gap: 1, mt: 1.5 }}>
			<Button type="submit" variant="outlined">
				Change this session
			</Button>
			{written && (
				<Button color={ofPattern ? 'primary' : 'error'} onClick={takeOut}>
					{ofPattern ? 'As in the weekly pattern' : 'Take it out'}
				</Button>
			)}
		</Box>
	)
}
