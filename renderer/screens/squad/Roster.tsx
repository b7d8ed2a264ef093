/** A roster taken in, for a new day or late arrivals: looked over first, then taken in. */
import { Alert, Box, Button } from '@mui/material'
import { useRef } from 'react'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { Needs } from '../../parts/Needs.tsx'
import { Panel, Way } from '../../parts/panels.tsx'
import { decodedText } from '../../parts/tableText.ts'
import { RosterPreview } from './RosterPreview.tsx'
import { type RosterState, type Standing, useRoster } from './useRoster.ts'

const side = { display: 'flex', flexWrap: 'wrap', gap: 2 } as const

const hint =
	'A table (CSV) as the club has it: names and birth dates, and what else it holds of shirt number, ' +
	'sex, guardian, guardian e-mail and phone, consents. You see how it is read before anything is saved.'

/** @param into where players are added to a day that stands */
export function NewDay({ into }: { into?: Standing }) {
	return (
		<List
			title={into ? 'Late arrivals' : 'New screening day'}
			roster={useRoster('day', into)}
			into={into}
		/>
	)
}
/** A list of players put on record, without a screening day. */
export const NewPlayers = () => (
	<List title="The list" roster={useRoster('players', undefined)} into={undefined} />
)
interface ListProps {
	title: string
	roster: RosterState
	into: Standing | undefined
}
function List({ title, roster, into }: ListProps) {
	const { team, text, look, action, made, purpose } = roster
	return (
		<Panel title={title} hint={hint}>
			<Form submit={look} sx={{ display: 'grid', gap: 2 }}>
				{!into && (
					<Box sx={side}>
						<Box sx={{ flexGrow: 1 }}>
							<Field
								label={purpose === 'day' ? 'Team' : 'Club of all of them'}
								value={team}
								set={roster.setTeam}
								optional={purpose === 'players'}
							/>
						</Box>
						{purpose === 'day' && (
							<Box sx={{ width: 240 }}>
								<Field label="Day" type="date" value={roster.day} set={roster.setDay} />
							</Box>
						)}
					</Box>
				)}
				<FileChooser read={roster.readFile} />
				<Field
					label={purpose === 'day' ? 'Roster' : 'List'}
					value={text}
					set={roster.type}
					rows={into ? 3 : 6}
					optional
					hint="Or paste the table here, the headings first."
				/>
				<Look busy={action.busy} team={purpose === 'day' ? team : undefined} text={text} />
				{roster.preview && (
					<RosterPreview
						roster={roster}
						preview={roster.preview}
						adding={into !== undefined || made !== undefined}
					/>
				)}
				<Trouble says={action.says} />
				{action.done && (
					<Alert severity="success" role="status">
						{action.done} {made && <Way to={`#/squad/${made}`}>Open the board</Way>}
					</Alert>
				)}
			</Form>
		</Panel>
	)
}

interface LookProps {
	busy: boolean
	/** undefined where none is needed */
	team: string | undefined
	text: string
}
function Look({ busy, team, text }: LookProps) {
	const isNamed = team === undefined || team.trim() !== ''
	return (
		<Box sx={{ ...side, alignItems: 'center' }}>
			<Button type="submit" variant="outlined" disabled={busy || !text.trim() || !isNamed}>
				{team === undefined ? 'Look at the list' : 'Look at the roster'}
			</Button>
			<Needs
				fields={[
					[isNamed ? 'named' : '', 'team'],
					[text.trim(), team === undefined ? 'list' : 'roster'],
				]}
			/>
		</Box>
	)
}

function FileChooser({ read }: { read: (words: string) => void }) {
	const chooser = useRef<HTMLInputElement>(null)
	return (
		<Box>
			<Button variant="outlined" onClick={() => chooser.current?.click()}>
				Choose a file
			</Button>
			<input
				ref={chooser}
				hidden
				type="file"
				accept=".csv,.tsv,.txt,text/csv,text/plain"
				aria-label="Roster file"
				onChange={async ({ target }) => {
					const [file] = target.files ?? []
					// the same file can be chosen again once it was mended
					target.value = ''
					if (file) read(decodedText(new Uint8Array(await file.arrayBuffer())))
				}}
			/>
		</Box>
	)
}
