/** A new person with a role and a first passphrase. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { NewPassphrase } from '../../parts/NewSecret.tsx'
import { notTyped, passphraseProblems, refuseProblems } from '../../parts/secrets.ts'
import { change, useHostAction } from '../../query.ts'

const addable = ['clinician', 'student', 'reception'] as const
const none = { name: '', registration: '', role: '' }

export function AddPerson({ names }: { names: readonly string[] }) {
	const action = useHostAction()
	const [form, setForm] = useState(none)
	const [typed, setTyped] = useState(notTyped)
	const [adding, setAdding] = useState('')
	const put = (name: keyof typeof none) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const save = async () => {
		const role = addable.find((name) => name === form.role)
		const name = form.name.trim()
		if (!name || !role)
			throw new Error('Name or role is empty. Fill in the name and choose the role.')
		refuseProblems(passphraseProblems('First passphrase', typed))
		setAdding(name)
		try {
			await change('people.save', {
				name,
				registration: form.registration.trim(),
				role,
				passphrase: typed.once,
			})
		} finally {
			setAdding('')
		}
		setForm(none)
		setTyped(notTyped)
		return `Saved. ${name} unlocks with the passphrase, and is asked to change it then.`
	}
	return (
		<Form label="Add a person" submit={() => action.run(save)}>
			<Sheet
				title="Add a person"
				hint="A student's visits wait for a countersignature. Reception sees names, days, the documents to send and their first page, and no measures or findings."
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
				<Box />
				<NewPassphrase
					title="First passphrase"
					typed={typed}
					put={setTyped}
					names={[...names, form.name]}
				/>
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Add this person
					</Button>
				</Box>
				<Box sx={{ gridColumn: '1 / -1', '&:empty': { display: 'none' } }}>
					<Outcome of={action} />
				</Box>
				{adding && (
					<Typography role="status" color="textSecondary">
						Adding {adding}: the key is sealed with the passphrase. This takes a few seconds.
					</Typography>
				)}
			</Sheet>
		</Form>
	)
}
