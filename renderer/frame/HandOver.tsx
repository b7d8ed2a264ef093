/** Another person takes over at this PC: who, and their PIN or passphrase. One key from any page. */
import {
	Alert,
	Box,
	Button,
	Dialog,
	DialogContent,
	DialogTitle,
	FormControlLabel,
	FormLabel,
	Radio,
	RadioGroup,
	Typography,
} from '@mui/material'
import { type ReactNode, useState } from 'react'
import type { OutputOf } from '../../shared/contract.ts'
import { Answered } from '../parts/Answered.tsx'
import { Field, Form, Trouble } from '../parts/form.tsx'
import { endKeeping, keepAllTyped, typedNotSent } from '../parts/typedHere.ts'
import { change, useHost, useHostAction } from '../query.ts'
import type { Status } from './useSession.ts'

type Person = OutputOf<'session.people'>['people'][number]
type Working = Status['person']

const isPin = (typed: string): boolean => /^\d{4,10}$/.test(typed)
const titleOf = ({ hasPin }: Person): string => (hasPin ? 'PIN or passphrase' : 'Passphrase')

function Who({
	people,
	chosen,
	choose,
}: {
	people: readonly Person[]
	chosen: Person
	choose: (personId: string) => void
}) {
	return (
		<Box>
			<FormLabel id="takes-over">Who takes over</FormLabel>
			<RadioGroup
				aria-labelledby="takes-over"
				value={chosen.personId}
				onChange={(_, personId) => choose(personId)}
			>
				{people.map(({ personId, name, role }) => (
					<FormControlLabel
						key={personId}
						value={personId}
						control={<Radio autoFocus={personId === chosen.personId} />}
						label={`${name}, ${role}`}
						sx={{ '& .MuiFormControlLabel-label': { ml: 0.75 } }}
					/>
				))}
			</RadioGroup>
		</Box>
	)
}
/** What would go with the hand-over: forms are not kept for anybody else to read. */
function NotSent({ names }: { names: readonly string[] }) {
	if (names.length === 0) return null
	return (
		<Alert severity="warning" role="note">
			Typed on this page and not sent off: {names.join(', ')}. A hand-over takes it off the page. Go
			back and save it first, where it is still wanted.
		</Alert>
	)
}
function Choosing({ people, close }: { people: readonly Person[]; close: () => void }) {
	const [personId, setPersonId] = useState(people[0]?.personId)
	const [typed, setTyped] = useState('')
	const [notSent] = useState(typedNotSent)
	const { busy, says, run, forget } = useHostAction()
	const chosen = people.find((person) => person.personId === personId) ?? people[0]
	if (!chosen)
		return (
			<Typography>
				Nobody else works here yet. The owner adds people under Records, People.
			</Typography>
		)
	const take = async () => {
		if (!typed) throw new Error(`${titleOf(chosen)} of ${chosen.name} is empty. Type it.`)
		const secret = chosen.hasPin && isPin(typed) ? { pin: typed } : { passphrase: typed }
		try {
			await keepAllTyped()
		} catch (error) {
			const why = error instanceof Error ? error.message : String(error)
			throw new Error(`What was typed last is not saved yet, so nothing was handed over. ${why}`)
		}
		try {
			await change('session.switch', { personId: chosen.personId, ...secret })
		} finally {
			setTyped('')
		}
		endKeeping()
		close()
		return ''
	}
	return (
		<Form
			label="Hand over"
			submit={() => run(take)}
			sx={{ display: 'grid', gap: 2, gridTemplateColumns: 'minmax(0, 1fr)' }}
		>
			<NotSent names={notSent} />
			<Who
				people={people}
				chosen={chosen}
				choose={(next) => {
					setPersonId(next)
					setTyped('')
					forget()
				}}
			/>
			<Field
				label={titleOf(chosen)}
				type="password"
				value={typed}
				set={setTyped}
				hint={
					chosen.hasPin
						? 'After five wrong PINs only the passphrase opens, and the owner is told.'
						: 'A PIN is set under Records, My access. Wrong passphrases are told to the owner.'
				}
			/>
			<Trouble says={says} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				<Button type="submit" variant="contained" disabled={busy}>
					Hand over
				</Button>
				<Button onClick={close} disabled={busy}>
					Go on as before
				</Button>
			</Box>
		</Form>
	)
}
function Shown({ children, close }: { children: ReactNode; close: () => void }) {
	return (
		<Dialog
			open
			onClose={close}
			maxWidth="xs"
			fullWidth
			aria-labelledby="hand-over-title"
			transitionDuration={0}
		>
			<DialogTitle id="hand-over-title">Hand over</DialogTitle>
			<DialogContent>{children}</DialogContent>
		</Dialog>
	)
}
/** @param person who works here now */
export function HandOver({ person, close }: { person: Working; close: () => void }) {
	const asked = useHost('session.people', {})
	return (
		<Shown close={close}>
			<Typography color="textSecondary" sx={{ mb: 2 }}>
				{person?.name} works here now. Drafts and details are saved first; each stays under the name
				of who typed it.
			</Typography>
			<Answered of={asked} what="the people">
				{({ people }) => (
					<Choosing
						people={people.filter(({ personId }) => personId !== person?.personId)}
						close={close}
					/>
				)}
			</Answered>
		</Shown>
	)
}
