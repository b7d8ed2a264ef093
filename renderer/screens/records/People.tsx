/** The people who work with the records: the list, taking one off, adding one. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { acts, Panel, Rows } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'

type Person = OutputOf<'people.list'>['people'][number]
const addable = ['clinician', 'student', 'reception'] as const
const none = { name: '', registration: '', role: '', passphrase: '' }
function stateOf({ active, hasPin }: Person): string {
	if (!active) return 'taken off'
	return hasPin ? 'active, with PIN' : 'active'
}
function TakeOff({ person, action: { busy, run } }: { person: Person; action: HostAction }) {
	if (!person.active || person.role === 'owner') return ''
	const retire = async () => {
		await change('people.retire', {
			personId: person.personId,
			reason: 'taken off in the list of people',
		})
		return `${person.name} can no longer unlock.`
	}
	return (
		<Button
			size="small"
			variant="outlined"
			disabled={busy}
			aria-label={`Take ${person.name} off`}
			onClick={() => run(retire)}
		>
			Take off
		</Button>
	)
}
function AddPerson({ action }: { action: HostAction }) {
	const [form, setForm] = useState(none)
	const put = (name: keyof typeof none) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const save = async () => {
		const role = addable.find((name) => name === form.role)
		if (!form.name.trim() || !role)
			throw new Error('Name or role is empty. Fill in the name and choose the role.')
		await change('people.save', {
			name: form.name.trim(),
			registration: form.registration.trim(),
			role,
			passphrase: form.passphrase,
		})
		setForm(none)
		return 'Saved. This person unlocks with the passphrase, and should change it under My access.'
	}
	return (
		<Form submit={() => action.run(save)}>
			<Sheet
				title="Add a person"
				hint="A student's visits wait for a countersignature. Reception sees no measures."
			>
				<Field label="Name" value={form.name} set={put('name')} />
				<Field label="Role" value={form.role} set={put('role')} options={addable} />
				<Field
					label="Registration"
					value={form.registration}
					set={put('registration')}
					optional
					hint="Needed for a clinician."
				/>
				<Field
					label="First passphrase"
					type="password"
					autoComplete="new-password"
					value={form.passphrase}
					set={put('passphrase')}
					hint={`${leastPassphrase} characters or more.`}
				/>
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Add this person
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
export function People() {
	const list = useHost('people.list', {})
	const action = useHostAction()
	return (
		<Answered of={list} what="the people">
			{({ people }) => (
				<>
					<Outcome of={action} />
					<Panel
						title="People"
						hint="Each has a passphrase of their own. Whatever they do stands under their name."
					>
						<Rows
							label="People"
							heads={['Name', 'Registration', 'Role', 'State', acts]}
							empty="Nobody yet."
							rows={people.map((person) => ({
								key: person.personId,
								cells: [
									person.name,
									person.registration,
									person.role,
									stateOf(person),
									<TakeOff key="off" person={person} action={action} />,
								],
							}))}
						/>
					</Panel>
					<AddPerson action={action} />
				</>
			)}
		</Answered>
	)
}
