/** A roster taken in, for a new day or late arrivals: looked over first, then taken in. */
import { Alert, Box, Button } from '@mui/material'
import { useRef, useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { Needs } from '../../parts/Needs.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'
import { type Answers, RosterPreview } from './RosterPreview.tsx'

const side = { display: 'flex', flexWrap: 'wrap', gap: 2 } as const

const hint =
	'A table (CSV) with the columns number, given name, family name, birth date, sex; also ' +
	'guardian, guardian email, guardian phone, consents. Nothing is saved until you confirm.'

/** A day that stands, to which players are added. */
interface Standing {
	squadId: string
	team: string
	day: string
}
/** The roster typed, what the host read of it, and who of it was said to be on record. */
function useRoster(into: Standing | undefined) {
	const [team, setTeam] = useState(into?.team ?? '')
	const [day, setDay] = useState(into?.day ?? today())
	const [text, setText] = useState('')
	const [preview, setPreview] = useState<OutputOf<'squad.previewRoster'>>()
	const [same, setSame] = useState<Answers>({})
	const action = useHostAction()
	/** Other words: what was read of the earlier ones no longer holds. */
	const type = (words: string) => {
		setText(words)
		setPreview(undefined)
	}
	const look = (words: string) =>
		action.run(async () => {
			setPreview(await call('squad.previewRoster', { text: words, team, day }))
			setSame({})
			return ''
		})
	const take = () =>
		action.run(async () => {
			const standing = into ? { squadId: into.squadId } : {}
			const { squadId } = await change('squad.create', { text, team, day, same, ...standing })
			if (!into) navigate(`/squad/${squadId}`)
			type('')
			return 'Imported.'
		})
	const answer = (row: number, who: string) => setSame((now) => ({ ...now, [String(row)]: who }))
	return { team, setTeam, day, setDay, text, type, look, preview, same, answer, take, action }
}

/** @param into where players are added to a day that stands */
export function NewDay({ into }: { into?: Standing }) {
	const roster = useRoster(into)
	const { team, text, look, action, preview } = roster
	return (
		<Panel title={into ? 'Late arrivals' : 'New screening day'} hint={hint}>
			<Form submit={() => look(text)} sx={{ display: 'grid', gap: 2 }}>
				{!into && (
					<Box sx={side}>
						<Box sx={{ flexGrow: 1 }}>
							<Field label="Team" value={team} set={roster.setTeam} />
						</Box>
						<Box sx={{ width: 240 }}>
							<Field label="Day" type="date" value={roster.day} set={roster.setDay} />
						</Box>
					</Box>
				)}
				<FileChooser
					read={(words) => {
						roster.type(words)
						look(words)
					}}
				/>
				<Field
					label="Roster"
					value={text}
					set={roster.type}
					rows={into ? 3 : 6}
					optional
					hint="Or paste the table here, the headings first."
				/>
				<Trouble says={action.says} />
				<Look busy={action.busy} team={team} text={text} />
				{preview && (
					<RosterPreview
						preview={preview}
						same={roster.same}
						answer={roster.answer}
						busy={action.busy}
						adding={into !== undefined}
						take={roster.take}
					/>
				)}
				{action.done && (
					<Alert severity="success" role="status">
						{action.done}
					</Alert>
				)}
			</Form>
		</Panel>
	)
}

function Look({ busy, team, text }: { busy: boolean; team: string; text: string }) {
	return (
		<Box sx={{ ...side, alignItems: 'center' }}>
			<Button type="submit" variant="outlined" disabled={busy || !text.trim() || !team.trim()}>
				Look at the roster
			</Button>
			<Needs
				fields={[
					[team.trim(), 'team'],
					[text.trim(), 'roster'],
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
				accept=".csv,text/csv,text/plain"
				aria-label="Roster file"
				onChange={(event) => {
					const [file] = event.target.files ?? []
					if (file) void file.text().then(read)
				}}
			/>
		</Box>
	)
}
