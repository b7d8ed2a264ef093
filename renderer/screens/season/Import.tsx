/**
 * A fixture list read in: what it would change is shown before anything changes; what can be read
 * two ways is asked.
 */
import { Alert, Box, Button, Paper, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { isCalendarBytes, unfolded } from '../../../shared/engine/season/decode-list.ts'
import { weekdayName } from '../../../shared/engine/season/pattern.ts'
import { applyImport, type ImportPreview } from '../../../shared/engine/season/preview.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import type { Session } from '../../../shared/engine/visit/visit.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Trouble } from '../../parts/form.tsx'
import { Choice, Text } from './fields.tsx'
import { codeOptions, type Edit } from './Weekly.tsx'

const shownAtMost = 12
const sessionWords = (one: Session): string =>
	`${weekdayName(one.date)} ${dayInWords(one.date)}${one.start ? ` ${one.start}` : ''}, ` +
	`${one.kind}, ` +
	`${termWords(one.surface)}${one.title ? `, ${one.title}` : ''}${one.status ? ` (${one.status})` : ''}`
const optionWords: Record<string, string> = { 'day-month': 'day first', 'month-day': 'month first' }
const isCalendar = (text: string): boolean => /BEGIN:VCALENDAR/i.test(text.slice(0, 2000))
/**
 * UTF-8, or the bytes of older spreadsheets. A calendar's folds come out first: one may stand
 * inside a character.
 */
function textOf(file: ArrayBuffer): string {
	const raw = new Uint8Array(file)
	const bytes = isCalendarBytes(raw) ? unfolded(raw) : raw
	try {
		return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
	} catch {
		return new TextDecoder('windows-1252').decode(bytes)
	}
}
function Lines({ title, rows }: { title: string; rows: readonly string[] }) {
	if (rows.length === 0) return null
	return (
		<Box sx={{ mt: 1 }}>
			<Typography variant="h3">
				{title} ({rows.length})
			</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5, fontSize: '0.9rem' }}>
				{[...new Set(rows)].slice(0, shownAtMost).map((one) => (
					<li key={one}>{one}</li>
				))}
				{rows.length > shownAtMost && <li>and {rows.length - shownAtMost} more</li>}
			</Box>
		</Box>
	)
}
export function Import({
	playerId,
	season,
	change,
	saved,
}: Edit & { playerId: string; saved: () => Promise<void> }) {
	const [text, setText] = useState('')
	const [source, setSource] = useState('fixture list')
	const [team, setTeam] = useState('')
	const [code, setCode] = useState('')
	const [answers, setAnswers] = useState<Record<string, string>>({})
	const [preview, setPreview] = useState<ImportPreview>()
	const [says, setSays] = useState('')
	const [busy, setBusy] = useState(false)
	const look = async () => {
		if (!text.trim()) {
			setSays(
				'List: empty, given nothing, allowed: the text of an .ics calendar or of a .csv table, ' +
					'pasted or from a file.',
			)
			return
		}
		setBusy(true)
		setSays('')
		try {
			await saved()
			setPreview(
				await call('season.previewImport', {
					playerId,
					text,
					kind: isCalendar(text) ? 'ics' : 'csv',
					answers: { ...answers, source, team, code },
				}),
			)
		} catch (error) {
			setPreview(undefined)
			setSays(wordsOf(error))
		} finally {
			setBusy(false)
		}
	}
	const count = preview ? preview.add.length + preview.change.length + preview.remove.length : 0
	const take = () => {
		if (!preview) return
		change(
			{ ...season, sessions: applyImport(season.sessions ?? [], preview) },
			`Taken over from ${source}: ${preview.add.length} added, ${preview.change.length} ` +
				`changed, ${preview.remove.length} taken out.`,
		)
		setPreview(undefined)
		setText('')
		setAnswers({})
	}
	return (
		<Paper component="section" variant="outlined" aria-labelledby="import" sx={{ p: 2 }}>
			<Typography variant="h2" id="import">
				Import a fixture list
			</Typography>
			<Typography color="text.secondary" variant="body2" sx={{ mt: 0.5 }}>
				Calendar (.ics) or table (.csv). Nothing changes before you have seen what would.
			</Typography>
			<Stack spacing={1.25} sx={{ mt: 1.5 }}>
				<Text label="Name of the list" value={source} set={setSource} />
				<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', gap: 1 }}>
					<Text
						label="Team of the list"
						value={team}
						set={setTeam}
						hint="Only where there are several"
					/>
					<Choice
						label="Code of the list"
						value={code}
						set={setCode}
						none="as in the visit"
						options={codeOptions}
					/>
				</Box>
				<Box>
					<Box
						component="label"
						htmlFor="season-file"
						sx={{ display: 'block', fontSize: '0.85rem', fontWeight: 600 }}
					>
						File
					</Box>
					<Box
						component="input"
						id="season-file"
						type="file"
						accept=".ics,.csv,text/calendar,text/csv"
						sx={{ display: 'block', minHeight: 44, font: 'inherit', width: '100%' }}
						onChange={(event) => {
							const file = (event.target as HTMLInputElement).files?.[0]
							if (file)
								file.arrayBuffer().then(
									(bytes) => {
										setText(textOf(bytes))
										setPreview(undefined)
										setAnswers({})
									},
									() => setSays(`The file ${file.name} could not be read. Choose it again.`),
								)
						}}
					/>
				</Box>
				<Text
					label="or paste its text"
					rows={4}
					value={text}
					set={(value) => {
						setText(value)
						setPreview(undefined)
						setAnswers({})
					}}
				/>
				<Trouble says={says} />
				{preview?.questions.map((question) => (
					<Choice
						key={question.key}
						label={question.says}
						value={answers[question.key] ?? ''}
						set={(value) => setAnswers((now) => ({ ...now, [question.key]: value }))}
						options={question.options.map((option) => [
							option,
							optionWords[option] ?? termWords(option),
						])}
					/>
				))}
				<Box>
					<Button variant="outlined" disabled={busy} onClick={() => void look()}>
						{preview && preview.questions.length > 0
							? 'Read again with these answers'
							: 'Show what would change'}
					</Button>
				</Box>
			</Stack>
			<Box role="status" aria-live="polite" sx={{ mt: 1 }}>
				{preview && (
					<>
						{preview.problems.length > 0 && (
							<Alert severity="warning" sx={{ mb: 1 }}>
								{preview.problems.map((problem) => (
									<div key={problem.says}>{problem.says}</div>
								))}
							</Alert>
						)}
						{preview.questions.length > 0 && (
							<Alert severity="info" sx={{ mb: 1 }}>
								Answer the{' '}
								{preview.questions.length === 1
									? 'question'
									: `${preview.questions.length} questions`}{' '}
								above; until then nothing of them is taken over.
							</Alert>
						)}
						{preview.notes.map((note) => (
							<Typography key={note} variant="body2">
								{note}
							</Typography>
						))}
						<Lines title="Would be added" rows={preview.add.map(sessionWords)} />
						<Lines title="Would change" rows={preview.change.map((one) => one.says)} />
						<Lines title="Would be taken out" rows={preview.remove.map(sessionWords)} />
						{count === 0 && preview.questions.length === 0 && (
							<Typography sx={{ mt: 1 }}>
								Nothing would change: {preview.same}{' '}
								{preview.same === 1 ? 'session is' : 'sessions are'} already here.
							</Typography>
						)}
					</>
				)}
			</Box>
			{preview && count > 0 && preview.questions.length === 0 && (
				<Button variant="contained" sx={{ mt: 1.5 }} onClick={take}>
					Take these {count} changes over
				</Button>
			)}
		</Paper>
	)
}
