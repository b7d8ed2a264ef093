/** My passphrase and PIN, and handing this PC over to another person. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { Refused } from '../../parts/Answered.tsx'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'

function HandOver({ action }: { action: HostAction }) {
	const asked = useHost('session.people', {})
	const people = asked.value?.people ?? []
	const [name, setName] = useState('')
	const [pin, setPin] = useState('')
	const hand = async () => {
		const person = people.find((known) => known.name === name)
		if (!person) throw new Error('The person is not chosen. Choose one from the list.')
		try {
			await change('session.switch', { personId: person.personId, pin })
		} finally {
			setPin('')
		}
		return `${person.name} works here now.`
	}
	return (
		<Form submit={() => action.run(hand)}>
			<Sheet
				title="Hand over to another person"
				hint="Those who set a PIN can take over without unlocking anew."
			>
				<Field
					label="Person"
					value={name}
					set={setName}
					options={people.map((person) => person.name)}
				/>
				<Field label="Their PIN" type="password" value={pin} set={setPin} />
				<Refused of={asked} />
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Hand over
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
const empty = { old: '', passphrase: '', pin: '' }
function OwnSecrets({ action: { busy, run } }: { action: HostAction }) {
	const [form, setForm] = useState(empty)
	const put = (name: keyof typeof form) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const changePassphrase = async () => {
		await change('session.changePassphrase', { old: form.old, passphrase: form.passphrase })
		setForm(empty)
		return 'The passphrase was changed.'
	}
	const setUpPin = async () => {
		await change('session.setPin', { passphrase: form.old, pin: form.pin })
		setForm(empty)
		return 'The PIN was set.'
	}
	return (
		<Sheet title="My passphrase and PIN">
			<Field
				label="Present passphrase"
				type="password"
				autoComplete="current-password"
				value={form.old}
				set={put('old')}
			/>
			<Box />
			<Field
				label="New passphrase"
				type="password"
				autoComplete="new-password"
				value={form.passphrase}
				set={put('passphrase')}
				optional
				hint={`${leastPassphrase} characters or more.`}
			/>
			<Field
				label="New PIN"
				type="password"
				value={form.pin}
				set={put('pin')}
				optional
				hint="4 to 10 digits."
			/>
			<Box>
				<Button
					variant="outlined"
					disabled={busy || !form.passphrase}
					onClick={() => run(changePassphrase)}
				>
					Change passphrase
				</Button>
			</Box>
			<Box>
				<Button variant="outlined" disabled={busy || !form.pin} onClick={() => run(setUpPin)}>
					Set PIN
				</Button>
			</Box>
		</Sheet>
	)
}
export function MyAccess() {
	const action = useHostAction()
	return (
		<>
			<Outcome of={action} />
			<HandOver action={action} />
			<OwnSecrets action={action} />
		</>
	)
}
