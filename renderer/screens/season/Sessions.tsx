/**
 * Every session as a table that is walked with the arrow keys: a letter pins a pair, Delete frees
 * it, Enter opens the session.
 */
import { Box, Button, Paper, Stack, Typography } from '@mui/material'
import { type KeyboardEvent, memo, useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { weekdayName } from '../../../shared/engine/season/pattern.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import {
	type Line,
	type Listed,
	pinned,
	readSession,
	withoutSession,
	withSession,
} from './edits.ts'
import { Choice, Day, Text } from './fields.tsx'
import { PairBadge } from './PairBadge.tsx'
import { type Edit, groundOptions, surfaceOptions } from './Weekly.tsx'

type Pairs = OutputOf<'season.open'>['pairs']
const statusWords = { cancelled: 'called off', bye: 'bye', injured: 'injured' } as const
const aPage = 10
const sentence = (words: readonly string[]): string =>
	words.map((word) => word.charAt(0).toUpperCase() + word.slice(1)).join('. ')

interface RowProps {
	line: Line
	index: number
	pairs: Pairs
	selected: boolean
	pick: (index: number) => void
}
const Row = memo(function Row({
	line: { session, plan, past },
	index,
	pairs,
	selected,
	pick,
}: RowProps) {
	const at = (id: string) => pairs.findIndex((pair) => pair.id === id)
	const badge = (id: string) => <PairBadge letter={pairs[at(id)]?.letter ?? '?'} />
	const worn =
		past && session.worn !== undefined
			? [session.worn]
			: (plan?.parts?.map((part) => part.pair) ?? (plan?.pair === undefined ? [] : [plan.pair]))
	return (
		<Box
			component="tr"
			data-row={index}
			tabIndex={selected ? 0 : -1}
			aria-selected={selected}
			onFocus={() => pick(index)}
			onClick={(event: { currentTarget: HTMLElement }) => event.currentTarget.focus()}
			sx={{
				cursor: 'default',
				scrollMarginTop: '48px',
				scrollMarginBottom: '12px',
				color: past || session.status ? 'text.secondary' : undefined,
				bgcolor: selected ? 'action.selected' : undefined,
				'&:focus-visible': { outlineOffset: -3 },
				'& td': { px: 1, py: 0.75, borderBottom: 1, borderColor: 'divider', verticalAlign: 'top' },
			}}
		>
			<Box component="td" sx={{ whiteSpace: 'nowrap' }}>
				{weekdayName(session.date).slice(0, 3)}{' '}
				{dayInWords(session.date)
					.replace(/ (\d{4})$/, '')
					.replace(/ ([A-Z][a-z]{2})[a-z]*$/, ' $1')}
			</Box>
			<Box component="td" sx={{ whiteSpace: 'nowrap' }}>
				{session.start ?? '-'}
			</Box>
			<Box component="td" sx={{ minWidth: 90 }}>
				{session.kind}
				{session.title ? `, ${session.title}` : ''}
			</Box>
			<Box component="td" sx={{ whiteSpace: 'nowrap' }}>
				{termWords(session.surface)}
			</Box>
			<td>{session.ground ?? 'dry'}</td>
			<Box component="td" sx={{ whiteSpace: 'nowrap' }}>
				{session.status ? (
					statusWords[session.status]
				) : worn.length > 0 ? (
					<Box component="span" sx={{ display: 'inline-flex', gap: 0.5 }}>
						{worn.map((one) => (
							<span key={one}>{badge(one)}</span>
						))}
					</Box>
				) : plan ? (
					'none'
				) : (
					'not planned'
				)}
			</Box>
			<Box component="td" sx={{ fontSize: '0.88rem', overflowWrap: 'anywhere' }}>
				{plan && plan.reasons.length > 0 && sentence(plan.reasons)}
				{plan?.unmet.map((one) => (
					<Box key={one} component="strong" sx={{ display: 'block', color: 'warning.main' }}>
						Not met: {one}
					</Box>
				))}
			</Box>
			<Box component="td" sx={{ minWidth: 84 }}>
				{session.pinned !== undefined &&
					(at(session.pinned) >= 0
						? `pinned ${pairs[at(session.pinned)]?.letter}`
						: 'pinned, pair unknown')}
			</Box>
		</Box>
	)
})
interface EditorProps extends Edit {
	line: Line
	pairs: Pairs
	done: () => void
}
function Editor({ line: { session, past }, pairs, season, change, done }: EditorProps) {
	const text = (one: Listed): Record<string, string> => ({
		date: one.date,
		start: one.start ?? '',
		minutes: String(one.minutes),
		surface: one.surface,
		ground: one.ground ?? '',
		status: one.status ?? '',
		pinned: one.pinned ?? '',
		worn: one.worn ?? '',
	})
	const [form, setForm] = useState(() => text(session))
	const [says, setSays] = useState('')
	const set = (key: string) => (value: string) => {
		setForm((now) => ({ ...now, [key]: value }))
		setSays('')
	}
	const first = useRef<HTMLDivElement>(null)
	useEffect(() => {
		first.current?.querySelector('select')?.focus()
	}, [])
	const fromPattern = (season.pattern ?? []).some(
		(one) => session.id === `${one.id}:${session.id.slice(-10)}`,
	)
	const written = (season.sessions ?? []).some((one) => one.id === session.id)
	const options = pairs.map((pair): [string, string] => [pair.id, `${pair.letter}: ${pair.name}`])
	const submit = () => {
		const {
			date: _d,
			start: _s,
			minutes: _m,
			surface: _f,
			ground: _g,
			status: _t,
			pinned: _p,
			worn: _w,
			...rest
		} = session
		const read = readSession({ kind: session.kind, ...form })
		if (!read.ok) {
			setSays(read.says)
			return
		}
		if (read.value.date < season.from || read.value.date > season.to) {
			setSays(
				`Date: outside the season, given ${dayInWords(read.value.date)}, allowed: ` +
					`${dayInWords(season.from)} to ${dayInWords(season.to)}.`,
			)
			return
		}
		change(
			withSession(season, { ...rest, ...read.value, id: session.id }),
			`Changed: ${weekdayName(read.value.date)} ${dayInWords(read.value.date)}, ${session.kind}.`,
		)
		done()
	}
	return (
		<Paper
			component="form"
			noValidate
			variant="outlined"
			ref={first as never}
			aria-label="One session"
			onKeyDown={(event: KeyboardEvent) => {
				if (event.key === 'Escape') {
					event.preventDefault()
					done()
				}
			}}
			onSubmit={(event: { preventDefault: () => void }) => {
				event.preventDefault()
				submit()
			}}
			sx={{ p: 2, my: 1.5, borderColor: 'primary.main' }}
		>
			<Typography variant="h3">
				{weekdayName(session.date)} {dayInWords(session.date)}, {session.kind}
				{session.title ? `, ${session.title}` : ''}
			</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(9rem, 100%), 1fr))',
					gap: 1.25,
					mt: 1,
					alignItems: 'start',
				}}
			>
				<Choice
					label="Takes place"
					value={form.status ?? ''}
					set={set('status')}
					none="yes"
					options={[
						['cancelled', 'no: rained off or called off'],
						['bye', 'no: bye'],
						['injured', 'no: injured'],
					]}
				/>
				{past ? (
					<Choice
						label="Worn"
						value={form.worn ?? ''}
						set={set('worn')}
						none="as planned"
						options={options}
					/>
				) : (
					<Choice
						label="Pinned pair"
						value={form.pinned ?? ''}
						set={set('pinned')}
						none="none"
						options={options}
					/>
				)}
				<Choice
					label="Surface"
					value={form.surface ?? ''}
					set={set('surface')}
					options={surfaceOptions}
					required
				/>
				<Choice
					label="Ground"
					value={form.ground ?? ''}
					set={set('ground')}
					options={groundOptions}
					none="usual (dry)"
				/>
				<Day
					label="Date"
					name="Date of the session"
					value={form.date ?? ''}
					set={set('date')}
					hint="Move it to another day"
				/>
				<Text label="Start" value={form.start ?? ''} set={set('start')} />
				<Text label="Minutes" value={form.minutes ?? ''} set={set('minutes')} />
			</Box>
			<Trouble says={says} />
			<Box sx={{ display: 'flex', gap: 1, mt: 1.5 }}>
				<Button type="submit" variant="outlined">
					Change this session
				</Button>
				{written && (
					<Button
						color={fromPattern ? 'primary' : 'error'}
						onClick={() => {
							change(
								withoutSession(season, session.id),
								fromPattern
									? 'The session is as in the weekly pattern again.'
									: 'The session was taken out.',
							)
							done()
						}}
					>
						{fromPattern ? 'As in the weekly pattern' : 'Take it out'}
					</Button>
				)}
				<Button onClick={done}>Close</Button>
			</Box>
		</Paper>
	)
}
const emptySession = {
	date: '',
	start: '',
	minutes: '90',
	kind: 'match',
	surface: '',
	ground: '',
	title: '',
}
function AddOne({ season, change }: Edit) {
	const [form, setForm] = useState<Record<string, string>>(emptySession)
	const [says, setSays] = useState('')
	const set = (key: string) => (value: string) => {
		setForm((now) => ({ ...now, [key]: value }))
		setSays('')
	}
	const submit = () => {
		const read = readSession(form)
		if (!read.ok) {
			setSays(read.says)
			return
		}
		if (read.value.date < season.from || read.value.date > season.to) {
			setSays(
				`Date: outside the season, given ${dayInWords(read.value.date)}, allowed: ` +
					`${dayInWords(season.from)} to ${dayInWords(season.to)}.`,
			)
			return
		}
		const taken = new Set((season.sessions ?? []).map((session) => session.id))
		let id = `own-${read.value.date}`
		for (let n = 2; taken.has(id); n++) id = `own-${read.value.date}-${n}`
		change(
			withSession(season, { ...read.value, id }),
			`Added: ${weekdayName(read.value.date)} ${dayInWords(read.value.date)}, ${read.value.kind}.`,
		)
		setForm(emptySession)
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
			<Typography variant="h3">A further session, such as a final</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(9rem, 100%), 1fr))',
					gap: 1,
					alignItems: 'start',
					'& > *': { minWidth: 0 },
				}}
			>
				<Day
					label="Date"
					name="Date of the further session"
					value={form.date ?? ''}
					set={set('date')}
					hint=" "
				/>
				<Text label="Start" value={form.start ?? ''} set={set('start')} />
				<Text label="Minutes" value={form.minutes ?? ''} set={set('minutes')} />
				<Choice
					label="Kind"
					value={form.kind ?? ''}
					set={set('kind')}
					required
					options={[
						['match', 'match'],
						['training', 'training'],
					]}
				/>
				<Choice
					label="Surface"
					value={form.surface ?? ''}
					set={set('surface')}
					options={surfaceOptions}
				/>
				<Text label="Title" value={form.title ?? ''} set={set('title')} />
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
export function Sessions({
	lines,
	pairs,
	season,
	change,
}: Edit & { lines: readonly Line[]; pairs: Pairs }) {
	const ahead = lines.findIndex((one) => !one.past)
	const [at, setAt] = useState(Math.max(0, ahead))
	const [open, setOpen] = useState(false)
	const body = useRef<HTMLTableSectionElement>(null)
	const selected = Math.min(at, lines.length - 1)
	const focus = (index: number) =>
		body.current?.querySelector<HTMLElement>(`[data-row="${index}"]`)?.focus()
	const go = (index: number) => {
		const next = Math.max(0, Math.min(lines.length - 1, index))
		setAt(next)
		focus(next)
	}
	const pin = (line: Line, pair: Pairs[number] | undefined) => {
		if (line.past || line.session.status) return
		change(
			pinned(season, line.session, pair?.id),
			pair
				? `Pinned ${pair.letter} to ${weekdayName(line.session.date)} ` +
						`${dayInWords(line.session.date)}. Plan again.`
				: `Pin taken off ${weekdayName(line.session.date)} ${dayInWords(line.session.date)}. ` +
						'Plan again.',
		)
	}
	const key = (event: KeyboardEvent) => {
		if (event.ctrlKey || event.metaKey || event.altKey) return
		const moves: Record<string, number> = {
			ArrowDown: selected + 1,
			ArrowUp: selected - 1,
			PageDown: selected + aPage,
			PageUp: selected - aPage,
			Home: 0,
			End: lines.length - 1,
		}
		const line = lines[selected]
		const to = moves[event.key]
		const pair = pairs.find((one) => one.letter === event.key.toUpperCase())
		if (to !== undefined) go(to)
		else if (event.key === 'Enter') setOpen(true)
		else if (line && (event.key === 'Delete' || event.key === 'Backspace')) pin(line, undefined)
		else if (line && pair) pin(line, pair)
		else return
		event.preventDefault()
	}
	const done = () => {
		setOpen(false)
		setTimeout(() => focus(selected))
	}
	const line = lines[selected]
	return (
		<Paper component="section" variant="outlined" aria-labelledby="sessions" sx={{ p: 2 }}>
			<Typography variant="h2" id="sessions">
				Sessions
			</Typography>
			<Typography color="text.secondary" variant="body2" id="sessions-keys" sx={{ mt: 0.5 }}>
				Arrow keys walk the list. A pair's letter pins it to the session, Delete takes the pin off,
				Enter opens the session to move it or call it off.
			</Typography>
			{open && line && (
				<Editor
					key={line.session.id}
					line={line}
					pairs={pairs}
					season={season}
					change={change}
					done={done}
				/>
			)}
			{lines.length === 0 ? (
				<Typography sx={{ mt: 1 }}>
					No session yet. Add a weekly session, import a list, or add one below.
				</Typography>
			) : (
				<Box
					sx={{
						maxHeight: '70vh',
						overflow: 'auto',
						mt: 1.5,
						border: 1,
						borderColor: 'divider',
						borderRadius: 1,
					}}
				>
					<Box
						component="table"
						role="grid"
						aria-labelledby="sessions"
						aria-describedby="sessions-keys"
						sx={{
							borderCollapse: 'separate',
							borderSpacing: 0,
							width: '100%',
							fontSize: '0.93rem',
							fontVariantNumeric: 'tabular-nums',
							'& th': {
								position: 'sticky',
								top: 0,
								zIndex: 1,
								bgcolor: 'background.paper',
								textAlign: 'left',
								px: 1,
								py: 0.75,
								borderBottom: 2,
								borderColor: 'divider',
							},
						}}
					>
						<thead>
							<tr>
								{['Date', 'Start', 'Kind', 'Surface', 'Ground', 'Pair', 'Why', 'Pin'].map((one) => (
									<th key={one} scope="col">
										{one}
									</th>
								))}
							</tr>
						</thead>
						<tbody ref={body} onKeyDown={key}>
							{lines.map((one, index) => (
								<Row
									key={one.session.id}
									line={one}
									index={index}
									pairs={pairs}
									selected={index === selected}
									pick={setAt}
								/>
							))}
						</tbody>
					</Box>
				</Box>
			)}
			<AddOne season={season} change={change} />
		</Paper>
	)
}
