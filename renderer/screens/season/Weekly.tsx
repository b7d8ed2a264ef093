/** The weekly pattern: the sessions that come back each week. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { Pattern } from '../../../shared/engine/visit/visit.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { newPatternId, readPattern, weekdays, withoutPattern, withPattern } from './edits.ts'
import { Choice, columns, Text } from './fields.tsx'
import { listed } from './listed.ts'
import {
	codeOptions,
	type Edit,
	groundOptions,
	type Option,
	surfaceOptions,
	weeklyKinds,
} from './options.ts'
import { useEntries } from './useEntries.ts'
import { patternWords } from './words.ts'

const weekdayOptions = weekdays.map((weekday): Option => [weekday, capital(weekday)])
const empty = {
	weekday: '',
	start: '',
	minutes: '75',
	kind: 'training',
	surface: '',
	ground: '',
	team: '',
	code: '',
	from: '',
	to: '',
}
const entriesOf = ({ id: _, ...pattern }: Pattern): Record<string, string> => {
	const given = Object.entries(pattern).map(([key, value]) => [key, String(value)])
	return { ...empty, ...Object.fromEntries(given) }
}

export function Weekly({ season, change }: Edit) {
	const form = useEntries(empty)
	const [id, setId] = useState<string>()
	const { entries, setEntries, setSays } = form
	const submit = () => {
		const { weekday, kind } = entries
		const read = readPattern({
			...entries,
			id: id ?? newPatternId(season, weekday || 'day', kind || 'session'),
		})
		if (!read.ok) return setSays(read.says)
		const says = `${id ? 'Changed' : 'Added'}: ${patternWords(read.value)}.`
		change(withPattern(season, read.value), says)
		setEntries(({ surface = '', team = '' }) => ({ ...empty, surface, team }))
		setId(undefined)
	}
	const edit = (pattern: Pattern) => {
		setId(pattern.id)
		setEntries(entriesOf(pattern))
	}
	const leave = () => {
		setId(undefined)
		setEntries(empty)
	}
	const remove = (pattern: Pattern) =>
		change(
			withoutPattern(season, pattern.id),
			`Removed: ${patternWords(pattern)}. What was played stays.`,
		)
	return (
		<Panel named title="Weekly pattern">
			<Patterns patterns={season.pattern ?? []} edit={edit} remove={remove} />
			<Stack
				component="form"
				noValidate
				aria-label="Weekly session"
				spacing={1.25}
				sx={{ mt: 1.5 }}
				onSubmit={(event) => {
					event.preventDefault()
					submit()
				}}
			>
				<Fields of={form.of} />
				<Trouble says={form.says} />
				<Box sx={{ display: 'flex', gap: 1 }}>
					<Button type="submit" variant="outlined">
						{id ? 'Save the change' : 'Add weekly session'}
					</Button>
					{id && <Button onClick={leave}>Leave as it was</Button>}
				</Box>
			</Stack>
		</Panel>
	)
}

interface PatternsProps {
	patterns: readonly Pattern[]
	edit: (pattern: Pattern) => void
	remove: (pattern: Pattern) => void
}
function Patterns({ patterns, edit, remove }: PatternsProps) {
	return (
		<>
			{patterns.length === 0 && (
				<Typography color="text.secondary" sx={{ mt: 0.5 }}>
					No weekly session yet.
				</Typography>
			)}
			<Box component="ul" aria-label="Weekly sessions" sx={listed.list}>
				{patterns.map((pattern) => {
					const words = patternWords(pattern)
					return (
						<li key={pattern.id}>
							<Box component="span" sx={listed.words}>
								{words}
							</Box>
							<Button size="small" aria-label={`Change ${words}`} onClick={() => edit(pattern)}>
								Change
							</Button>
							<Button
								size="small"
								color="error"
								aria-label={`Remove ${words}`}
								onClick={() => remove(pattern)}
							>
								Remove
							</Button>
						</li>
					)
				})}
			</Box>
		</>
	)
}

function Fields({ of }: { of: ReturnType<typeof useEntries>['of'] }) {
	return (
		<>
			<Box sx={columns('7rem')}>
				<Choice label="Weekday" {...of('weekday')} options={weekdayOptions} />
				<Text label="Start" {...of('start')} hint="18:00" />
				<Text label="Minutes" {...of('minutes')} />
			</Box>
			<Box sx={columns('9.5rem')}>
				<Choice label="Kind" {...of('kind')} options={weeklyKinds} />
				<Choice label="Surface" {...of('surface')} options={surfaceOptions} />
				<Choice label="Ground" {...of('ground')} options={groundOptions} none="usual (dry)" />
			</Box>
			<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', gap: 1 }}>
				<Text label="Team" {...of('team')} hint="Only where there are several" />
				<Choice label="Code" {...of('code')} none="as in the visit" options={codeOptions} />
			</Box>
		</>
	)
}
