/** Another person takes over at this PC by PIN. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import { Refused } from '../../parts/Answered.tsx'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { change, type HostAction, useHost } from '../../query.ts'

export function HandOver({ action }: { action: HostAction }) {
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
				hint={
					'Those who set a PIN can take over without unlocking anew. After five wrong PINs for a ' +
					'person only their passphrase opens, and the owner is told.'
				}
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
