/** A recipient added to the record: the address typed twice, its warnings read before it counts. */
import { Alert, Box, Button, Stack } from '@mui/material'
import { useState } from 'react'
import { recipientRoles, roleWords } from '../../../shared/desk/outbox/item.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { Field, Form, Outcome, Sheet } from '../../parts/form.tsx'
import { change, useHostAction } from '../../query.ts'

const none = { name: '', role: '', email: '', emailAgain: '', phone: '' }
type Entries = typeof none
/** The player stands on the record already. */
const isAdded = (role: (typeof recipientRoles)[number]) => role !== 'player'
const roles = recipientRoles.filter(isAdded).map((role) => roleWords[role])

export function AddContact({ playerId }: { playerId: string }) {
	const [entries, setEntries] = useState(none)
	const [warnings, setWarnings] = useState<string[]>([])
	const action = useHostAction()
	const put = (name: keyof Entries, text: string) => {
		setEntries((now) => ({ ...now, [name]: text }))
		setWarnings([])
	}
	const add = async () => {
		const { name, email, emailAgain } = entries
		const role = recipientRoles.find((known) => roleWords[known] === entries.role)
		if (!name.trim()) throw new Error('Name is empty. Fill it in.')
		if (!role || role === 'player') throw new Error('Role is not chosen. Choose one from the list.')
		const phone = entries.phone.trim() ? entries.phone : undefined
		const warningsRead = warnings.length > 0
		const contact = present({ playerId, name, role, email, emailAgain, phone, warningsRead })
		const answer = await change('outbox.addContact', contact)
		if (!answer.contactId) {
			setWarnings(answer.warnings)
			return ''
		}
		setEntries(none)
		setWarnings([])
		return 'On the record. Choose it above.'
	}
	return (
		<Form submit={() => action.run(add)}>
			<Stack spacing={2}>
				<ContactFields entries={entries} put={put} />
				<Outcome of={action} />
				{warnings.map((text) => (
					<Alert key={text} severity="warning" role="alert">
						{text}
					</Alert>
				))}
				<Box>
					<Button type="submit" variant="outlined" disabled={action.busy}>
						{warnings.length > 0 ? 'The address is right: add it' : 'Add to the record'}
					</Button>
				</Box>
			</Stack>
		</Form>
	)
}

interface ContactFieldsProps {
	entries: Entries
	put: (name: keyof Entries, text: string) => void
}
function ContactFields({ entries, put }: ContactFieldsProps) {
	const of = (name: keyof Entries) => ({
		value: entries[name],
		set: (text: string) => put(name, text),
	})
	return (
		<Sheet
			title="Add a recipient to the record"
			hint="Type the address twice; pasting it would repeat a slip."
		>
			<Field label="Name of the recipient" {...of('name')} />
			<Field label="Role" {...of('role')} options={roles} />
			<Field label="E-mail address" {...of('email')} optional />
			<Box onPaste={(event) => event.preventDefault()}>
				<Field label="E-mail address once more" {...of('emailAgain')} optional />
			</Box>
			<Field label="Telephone" {...of('phone')} optional hint="For the password." />
		</Sheet>
	)
}
