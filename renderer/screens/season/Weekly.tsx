/** The weekly pattern and what departs from it. */
import { Box, Button, Paper, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { codes, surfaces, termWords } from '../../../shared/engine/visit/terms.ts'
import type { Pattern, PatternException, Season } from '../../../shared/engine/visit/visit.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import {
	newPatternId,
	readException,
	readPattern,
	withException,
	withoutException,
	withoutPattern,
	withPattern,
} from './edits.ts'
import { Choice, Day, Text } from './fields.tsx'

export interface Edit {
	season: Season
	change: (next: Season, says: string) => void
}
const weekdays = [
	'monday',
	'tuesday',
	'wednesday',
	'thursday',
	'friday',
	'saturday',
	'sunday',
] as const
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)
export const codeOptions = codes.map((code): [string, string] => [code, termWords(code)])
const surfaceOptions = surfaces.map((surface): [string, string] => [surface, termWords(surface)])
export const groundOptions: [string, string][] = [
	['dry', 'dry'],
	['damp', 'damp'],
	['wet', 'wet'],
]
const patternWords = (one: Pattern): string =>
	`${capital(one.weekday)}${one.start ? ` ${one.start}` : ''}, ${one.minutes} min ${one.kind}, ` +
	`${termWords(one.surface)}${one.ground && one.ground !== 'dry' ? `, ${one.ground}` : ''}${one.team ? `, ${one.team}` : ''}${one.code ? `, ${termWords(one.code)}` : ''}${one.from ? `, from ${dayInWords(one.from)}` : ''}${one.to ? `, until ${dayInWords(one.to)}` : ''}`
const list = {
	m: 0,
	mt: 1,
	p: 0,
	listStyle: 'none',
	'& > li': {
		display: 'flex',
		alignItems: 'center',
		gap: 1,
		borderBottom: 1,
		borderColor: 'divider',
		py: 0.25,
	},
} as const
const grow = { flexGrow: 1, fontSize: '0.92rem' } as const
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

export function Weekly({ season, change }: Edit) {
	const [form, setForm] = useState<Record<string, string>>(empty)
	const [id, setId] = useState<string>()
	const [says, setSays] = useState('')
	const set = (key: string) => (value: string) => {
		setForm((now) => ({ ...now, [key]: value }))
		setSays('')
	}
	const submit = () => {
		const read = readPattern({
			...form,
			id: id ?? newPatternId(season, form.weekday || 'day', form.kind || 'session'),
		})
		if (!read.ok) {
			setSays(read.says)
			return
		}
		change(
			withPattern(season, read.value),
			`${id ? 'Changed' : 'Added'}: ${patternWords(read.value)}.`,
		)
		setForm((now) => ({ ...empty, surface: now.surface ?? '', team: now.team ?? '' }))
		setId(undefined)
	}
	return (
		<Paper component="section" variant="outlined" aria-labelledby="weekly" sx={{ p: 2 }}>
			<Typography variant="h2" id="weekly">
				Weekly pattern
			</Typography>
			{(season.pattern ?? []).length === 0 && (
				<Typography color="text.secondary" sx={{ mt: 0.5 }}>
					No weekly session yet.
				</Typography>
			)}
			<Box component="ul" aria-label="Weekly sessions" sx={list}>
				{(season.pattern ?? []).map((one) => (
					<li key={one.id}>
						<Box component="span" sx={grow}>
							{patternWords(one)}
						</Box>
						<Button
							size="small"
							aria-label={`Change ${patternWords(one)}`}
							onClick={() => {
								const { id: own, ...rest } = one
								setId(own)
								setForm({
									...empty,
									...Object.fromEntries(
										Object.entries(rest).map(([key, value]) => [key, String(value)]),
									),
								})
							}}
						>
							Change
						</Button>
						<Button
							size="small"
							color="error"
							aria-label={`Remove ${patternWords(one)}`}
							onClick={() =>
								change(
									withoutPattern(season, one.id),
									`Removed: ${patternWords(one)}. What was played stays.`,
								)
							}
						>
							Remove
						</Button>
					</li>
				))}
			</Box>
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
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(7rem, 100%), 1fr))',
						gap: 1,
					}}
				>
					<Choice
						label="Weekday"
						value={form.weekday ?? ''}
						set={set('weekday')}
						options={weekdays.map((weekday) => [weekday, capital(weekday)])}
					/>
					<Text label="Start" value={form.start ?? ''} set={set('start')} hint="18:00" />
					<Text label="Minutes" value={form.minutes ?? ''} set={set('minutes')} />
				</Box>
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(9.5rem, 100%), 1fr))',
						gap: 1,
					}}
				>
					<Choice
						label="Kind"
						value={form.kind ?? ''}
						set={set('kind')}
						options={[
							['training', 'training'],
							['match', 'match'],
						]}
					/>
					<Choice
						label="Surface"
						value={form.surface ?? ''}
						set={set('surface')}
						options={surfaceOptions}
					/>
					<Choice
						label="Ground"
						value={form.ground ?? ''}
						set={set('ground')}
						options={groundOptions}
						none="usual (dry)"
					/>
				</Box>
				<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', gap: 1 }}>
					<Text
						label="Team"
						value={form.team ?? ''}
						set={set('team')}
						hint="Only where there are several"
					/>
					<Choice
						label="Code"
						value={form.code ?? ''}
						set={set('code')}
						none="as in the visit"
						options={codeOptions}
					/>
				</Box>
				<Trouble says={says} />
				<Box sx={{ display: 'flex', gap: 1 }}>
					<Button type="submit" variant="outlined">
						{id ? 'Save the change' : 'Add weekly session'}
					</Button>
					{id && (
						<Button
							onClick={() => {
								setId(undefined)
								setForm(empty)
							}}
						>
							Leave as it was
						</Button>
					)}
				</Box>
			</Stack>
		</Paper>
	)
}
const sorts: [string, string][] = [
	['bye', 'Bye (match off)'],
	['cancelled', 'Rained off'],
	['injured', 'Injured, no play'],
	['wet', 'Ground wet'],
	['damp', 'Ground damp'],
	['start', 'Other start'],
	['surface', 'Other surface'],
]
function exceptionWords(one: PatternException, season: Season): string {
	const row =
		one.pattern === undefined ? undefined : season.pattern?.find((each) => each.id === one.pattern)
	const what = [
		one.status && sorts.find(([key]) => key === one.status)?.[1],
		one.ground && `ground ${one.ground}`,
		one.surface && `on ${termWords(one.surface)}`,
		one.start && `at ${one.start}`,
		one.minutes && `${one.minutes} min`,
	]
		.filter(Boolean)
		.join(', ')
	return (
		`${what}: ` +
		`${dayInWords(one.from)}${one.to && one.to !== one.from ? ` to ${dayInWords(one.to)}` : ''}${row ? ` (${capital(row.weekday)} ${row.kind})` : ''}`
	)
}
export function Exceptions({ season, change }: Edit) {
	const [sort, setSort] = useState('bye')
	const [form, setForm] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const set = (key: string) => (value: string) => {
		setForm((now) => ({ ...now, [key]: value }))
		setSays('')
	}
	const submit = () => {
		const { from = '', to = '', pattern = '', start = '', surface = '' } = form
		if (sort === 'start' && !start.trim())
			return setSays('Start: missing, given nothing, allowed: the new start as HH:MM.')
		if (sort === 'surface' && !surface)
			return setSays('Surface: missing, given nothing, allowed: one of the list.')
		const does: Record<string, string> =
			sort === 'wet' || sort === 'damp'
				? { ground: sort }
				: sort === 'start'
					? { start }
					: sort === 'surface'
						? { surface }
						: { status: sort }
		const read = readException({ from, to, pattern, ...does })
		if (!read.ok) return setSays(read.says)
		if (read.value.to !== undefined && read.value.to < read.value.from)
			return setSays(
				`To: before the first day, given ${dayInWords(read.value.to)}, allowed: ` +
					`${dayInWords(read.value.from)} or later.`,
			)
		change(withException(season, read.value), `Added: ${exceptionWords(read.value, season)}.`)
		setForm({})
	}
	return (
		<Paper component="section" variant="outlined" aria-labelledby="exceptions" sx={{ p: 2 }}>
			<Typography variant="h2" id="exceptions">
				Exceptions
			</Typography>
			<Typography color="text.secondary" variant="body2" sx={{ mt: 0.5 }}>
				Of the weekly pattern; injured takes out every session of those days. One session alone is
				moved or called off in the list of sessions.
			</Typography>
			<Box component="ul" aria-label="Exceptions" sx={list}>
				{(season.exceptions ?? []).map((exception, index) => (
					// biome-ignore lint/suspicious/noArrayIndexKey: exceptions have no id, and two may be equal
					<li key={`${index} ${exceptionWords(exception, season)}`}>
						<Box component="span" sx={grow}>
							{exceptionWords(exception, season)}
						</Box>
						<Button
							size="small"
							color="error"
							aria-label={`Remove ${exceptionWords(exception, season)}`}
							onClick={() =>
								change(
									withoutException(season, index),
									`Removed: ${exceptionWords(exception, season)}.`,
								)
							}
						>
							Remove
						</Button>
					</li>
				))}
			</Box>
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
				<Choice label="What" value={sort} set={setSort} options={sorts} required />
				{sort === 'start' && (
					<Text label="New start" value={form.start ?? ''} set={set('start')} hint="18:00" />
				)}
				{sort === 'surface' && (
					<Choice
						label="New surface"
						value={form.surface ?? ''}
						set={set('surface')}
						options={surfaceOptions}
					/>
				)}
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: 'repeat(auto-fit, minmax(min(10rem, 100%), 1fr))',
						gap: 1,
					}}
				>
					<Day
						label="From"
						name="Exception from"
						value={form.from ?? ''}
						set={set('from')}
						hint="First day"
					/>
					<Day
						label="To"
						name="Exception to"
						value={form.to ?? ''}
						set={set('to')}
						hint="Last day; empty for one day"
					/>
				</Box>
				<Choice
					label="Sessions"
					value={form.pattern ?? ''}
					set={set('pattern')}
					none="all"
					options={(season.pattern ?? []).map((one) => [
						one.id,
						`${capital(one.weekday)} ${one.kind}${one.start ? ` ${one.start}` : ''}`,
					])}
				/>
				<Trouble says={says} />
				<Box>
					<Button type="submit" variant="outlined">
						Add exception
					</Button>
				</Box>
			</Stack>
		</Paper>
	)
}
export { surfaceOptions }
