/** Roster import: preview with the problems of each row, then taken in. */
import { Alert, Box, Button, FormControlLabel, Radio, RadioGroup, Typography } from '@mui/material'
import { useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel, Rows, useAction } from '../../parts/panels.tsx'

/** 'birthDate' as 'birth date', as the heading of the list has it. */
const columnWords = (column: string) =>
	column
		.replace(/([A-Z])/g, ' $1')
		.replaceAll('.', ' ')
		.toLowerCase()
type Preview = OutputOf<'squad.previewRoster'>

/** @param into where players are added to a day that stands */
export function NewDay({ into }: { into?: { squadId: string; team: string; day: string } }) {
	const [team, setTeam] = useState(into?.team ?? '')
	const [day, setDay] = useState(into?.day ?? today())
	const [text, setText] = useState('')
	const [preview, setPreview] = useState<Preview>()
	const [same, setSame] = useState<Record<string, string>>({})
	const action = useAction()
	const chooser = useRef<HTMLInputElement>(null)
	const look = (words: string) =>
		action.run(async () => {
			setPreview(await call('squad.previewRoster', { text: words, team, day }))
			setSame({})
			return ''
		})
	const change = (words: string) => {
		setText(words)
		setPreview(undefined)
	}
	const take = () =>
		action.run(async () => {
			const { squadId } = await call('squad.create', {
				text,
				team,
				day,
				same,
				...(into ? { squadId: into.squadId } : {}),
			})
			if (!into) location.hash = `#/squad/${squadId}`
			change('')
			return 'Taken in.'
		})
	const open =
		preview?.rows.filter((row) => row.known.length > 0 && same[String(row.row)] === undefined) ?? []
	return (
		<Panel
			title={into ? 'Late arrivals' : 'New screening day'}
			hint="A table (CSV) with the columns number, given name, family name, birth date, sex; also guardian, guardian email, guardian phone, consents. Nothing is saved until you confirm."
		>
			<Box
				component="form"
				noValidate
				sx={{ display: 'grid', gap: 2 }}
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					look(text)
				}}
			>
				{!into && (
					<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2 }}>
						<Box sx={{ flexGrow: 1 }}>
							<Field label="Team" value={team} set={setTeam} />
						</Box>
						<Box sx={{ width: 240 }}>
							<Field label="Day" type="date" value={day} set={setDay} />
						</Box>
					</Box>
				)}
				<Box>
					<Button variant="outlined" onClick={() => chooser.current?.click()}>
						Choose a file
					</Button>
					<input
						ref={chooser}
						hidden
						type="file"
						accept=".csv,text/csv,text/plain"
						aria-label="Roster file"
						onChange={(event) => {
							const [file] = event.target.files ?? []
							if (file)
								void file.text().then((words) => {
									change(words)
									look(words)
								})
						}}
					/>
				</Box>
				<Field
					label="Roster"
					value={text}
					set={change}
					rows={into ? 3 : 6}
					optional
					hint="Or paste the table here, the headings first."
				/>
				<Trouble says={action.says} />
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
					<Button
						type="submit"
						variant="outlined"
						disabled={action.busy || !text.trim() || !team.trim()}
					>
						Look at the roster
					</Button>
					<Needs
						fields={[
							[team.trim(), 'team'],
							[text.trim(), 'roster'],
						]}
					/>
				</Box>
				{preview && (
					<Box sx={{ display: 'grid', gap: 2 }}>
						<Typography role="status" sx={{ fontWeight: 600 }}>
							{counted(preview.rows.length, 'player')} can be taken in,{' '}
							{counted(preview.problems.length, 'problem')}.
						</Typography>
						{preview.problems.length > 0 && (
							<Alert severity="error" role="alert">
								{preview.problems.map((problem) => (
									<Typography key={`${problem.row} ${problem.column} ${problem.message}`}>
										Row {problem.row}, {columnWords(problem.column)}: {problem.message}.
									</Typography>
								))}
							</Alert>
						)}
						<Rows
							label="Players of the roster"
							heads={['Row', 'Number', 'Player', 'Born', 'Guardian', 'Consents']}
							empty="No good row."
							rows={preview.rows.map((row) => ({
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
						{preview.rows
							.filter((row) => row.known.length > 0)
							.map((row) => (
								<RadioGroup
									key={row.row}
									aria-label={`Who is ${row.name}`}
									value={same[String(row.row)] ?? ''}
									onChange={(_, next) => setSame((now) => ({ ...now, [String(row.row)]: next }))}
								>
									<Typography sx={{ fontWeight: 600 }}>
										{row.name}, born {dayInWords(row.birthDate)}: on record already?
									</Typography>
									{row.known.map((known) => (
										<FormControlLabel
											key={known.playerId}
											value={known.playerId}
											control={<Radio />}
											label={
												`Yes, this is ${known.name}, born ` +
												`${dayInWords(known.birthDate)}${known.why === 'twin' ? ' (or a twin: check)' : ''}`
											}
										/>
									))}
									<FormControlLabel value="new" control={<Radio />} label="No, a new player" />
								</RadioGroup>
							))}
						<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
							<Button
								variant={into ? 'outlined' : 'contained'}
								disabled={
									action.busy ||
									preview.problems.length > 0 ||
									preview.rows.length === 0 ||
									open.length > 0
								}
								onClick={take}
							>
								{into ? 'Add to the board' : 'Take in and open the board'}
							</Button>
							<Typography variant="body2" color="textSecondary">
								{preview.problems.length > 0
									? 'Correct the rows above and look at the roster again.'
									: preview.rows.length === 0
										? 'There is no player in the roster.'
										: open.length > 0
											? 'Answer first who is on record already: ' +
												`${open.map((one) => one.name).join(', ')}.`
											: ''}
							</Typography>
						</Box>
					</Box>
				)}
				{action.done && (
					<Alert severity="success" role="status">
						{action.done}
					</Alert>
				)}
			</Box>
		</Panel>
	)
}
