/** What departs from the weekly pattern: byes, weather, injury, another start or surface. */
import { Box, Button, Stack } from '@mui/material'
import { useState } from 'react'
import { capital } from '../../../shared/engine/words/words.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { readException, withException, withoutException } from './edits.ts'
import { Choice, columns, Day, Text } from './fields.tsx'
import { listed } from './listed.ts'
import { type Edit, type Option, surfaceOptions } from './options.ts'
import { useEntries } from './useEntries.ts'
import { exceptionSorts, exceptionWords } from './words.ts'

/** What a sort of exception sets of a session; the other sorts say why there is none. */
const sets: Record<string, 'ground' | 'start' | 'surface'> = {
	wet: 'ground',
	damp: 'ground',
	start: 'start',
	surface: 'surface',
}
type Entries = Record<string, string>
/** The exception that the entries stand for, or what is wrong with them. */
function readEntries(sort: string, entries: Entries): ReturnType<typeof readException> {
	const { from = '', to = '', pattern = '', start = '', surface = '' } = entries
	if (sort === 'start' && !start.trim())
		return refused('Start: missing, given nothing, allowed: the new start as HH:MM.')
	if (sort === 'surface' && !surface)
		return refused('Surface: missing, given nothing, allowed: one of the list.')
	const field = sets[sort] ?? 'status'
	const does = field === 'start' ? start : field === 'surface' ? surface : sort
	const read = readException({ from, to, pattern, [field]: does })
	if (!read.ok || read.value.to === undefined || read.value.to >= read.value.from) return read
	return refused(
		`To: before the first day, given ${dayInWords(read.value.to)}, allowed: ` +
			`${dayInWords(read.value.from)} or later.`,
	)
}
const refused = (says: string) => ({ ok: false, says }) as const

export function Exceptions({ season, change }: Edit) {
	const [sort, setSort] = useState('bye')
	const { entries, setEntries, says, setSays, of } = useEntries({})
	const submit = () => {
		const read = readEntries(sort, entries)
		if (!read.ok) return setSays(read.says)
		change(withException(season, read.value), `Added: ${exceptionWords(read.value, season)}.`)
		setEntries({})
	}
	const rows = (season.pattern ?? []).map(
		({ id, weekday, kind, start }): Option => [
			id,
			`${capital(weekday)} ${kind}${start ? ` ${start}` : ''}`,
		],
	)
	return (
		<Panel
			named
			title="Exceptions"
			hint={
				'Of the weekly pattern; injured takes out every session of those days. One session alone ' +
				'is moved or called off in the list of sessions.'
			}
		>
			<ExceptionList season={season} change={change} />
			<Stack
				component="form"
				noValidate
				aria-label="Exception"
				spacing={1.25}
				sx={{ mt: 1.5 }}
				onSubmit={(event) => {
					event.preventDefault()
					submit()
				}}
			>
				<Choice label="What" value={sort} set={setSort} options={exceptionSorts} required />
				{sort === 'start' && <Text label="New start" {...of('start')} hint="18:00" />}
				{sort === 'surface' && (
					<Choice label="New surface" {...of('surface')} options={surfaceOptions} />
				)}
				<Box sx={columns('10rem')}>
					<Day label="From" name="Exception from" {...of('from')} hint="First day" />
					<Day label="To" name="Exception to" {...of('to')} hint="Last day; empty for one day" />
				</Box>
				<Choice label="Sessions" {...of('pattern')} none="all" options={rows} />
				<Trouble says={says} />
				<Box>
					<Button type="submit" variant="outlined">
						Add exception
					</Button>
				</Box>
			</Stack>
		</Panel>
	)
}

function ExceptionList({ season, change }: Edit) {
	return (
		<Box component="ul" aria-label="Exceptions" sx={listed.list}>
			{(season.exceptions ?? []).map((exception, index) => {
				const words = exceptionWords(exception, season)
				return (
					// biome-ignore lint/suspicious/noArrayIndexKey: exceptions have no id, two may be equal
					<li key={`${index} ${words}`}>
						<Box component="span" sx={listed.words}>
							{words}
						</Box>
						<Button
							size="small"
							color="error"
							aria-label={`Remove ${words}`}
							onClick={() => change(withoutException(season, index), `Removed: ${words}.`)}
						>
							Remove
						</Button>
					</li>
				)
			})}
		</Box>
	)
}
