/** What must be read before anything of a player leaves: written, and taken off with a reason. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { SendingNote } from '../../../shared/desk/outbox/sending-note.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayOfMoment } from '../../parts/dates.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'

/** Characters below which a note or a reason says nothing. */
const shortest = 3
const tooShort = (text: string): boolean => text.trim().length < shortest
const hint =
	'Shown before any document of this player leaves: a court order, an address that must not be ' +
	'told, two households.'

export function Notes({ playerId }: { playerId: string }) {
	const notes = useHost('outbox.notes', { playerId })
	const [text, setText] = useState('')
	const [removing, setRemoving] = useState<string>()
	const action = useHostAction()
	const add = () =>
		action.run(async () => {
			await change('outbox.addNote', { playerId, text })
			setText('')
			return ''
		})
	return (
		<Panel title="Read before sending" hint={hint}>
			<Refused of={notes} />
			<Trouble says={action.says} />
			{notes.value?.notes.map((note) => (
				<Note
					key={note.noteId}
					note={note}
					removing={removing === note.noteId}
					setRemoving={setRemoving}
					action={action}
				/>
			))}
			<Form submit={add} sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, alignItems: 'flex-end' }}>
				<Box sx={{ flexGrow: 1, maxWidth: 640 }}>
					<Field label="New note" value={text} set={setText} optional />
				</Box>
				<Button type="submit" variant="outlined" disabled={action.busy || tooShort(text)}>
					Add the note
				</Button>
				{tooShort(text) && (
					<Typography variant="body2" color="textSecondary" sx={{ alignSelf: 'center' }}>
						Write the note first.
					</Typography>
				)}
			</Form>
		</Panel>
	)
}

interface NoteProps {
	note: SendingNote
	removing: boolean
	/** Told which note is being taken off. */
	setRemoving: (noteId: string | undefined) => void
	action: HostAction
}
function Note({ note, removing, setRemoving, action }: NoteProps) {
	const { noteId, playerId } = note
	const remove = (reason: string) =>
		action.run(async () => {
			await change('outbox.removeNote', { playerId, noteId, reason })
			setRemoving(undefined)
			return ''
		})
	return (
		<Alert severity="warning" icon={false}>
			<Typography>{note.text}</Typography>
			<Typography variant="body2">
				{note.by}, {dayOfMoment(note.at)}
			</Typography>
			{removing ? (
				<Removal busy={action.busy} remove={remove} />
			) : (
				<Button onClick={() => setRemoving(noteId)}>It holds no more</Button>
			)}
		</Alert>
	)
}
function Removal({ busy, remove }: { busy: boolean; remove: (reason: string) => void }) {
	const [why, setWhy] = useState('')
	return (
		<Stack
			direction={{ xs: 'column', sm: 'row' }}
			spacing={1}
			sx={{ alignItems: { sm: 'flex-end' }, mt: 1 }}
		>
			<Box sx={{ minWidth: 280 }}>
				<Field label="Why it holds no more" value={why} set={setWhy} focus />
			</Box>
			<Button variant="outlined" disabled={busy || tooShort(why)} onClick={() => remove(why)}>
				Take it off
			</Button>
		</Stack>
	)
}
