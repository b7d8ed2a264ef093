/** The people who work with the records, and one's own passphrase and PIN. */
import { Alert, Box, Button } from '@mui/material'
import { useState } from 'react'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { call } from '../../host.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { acts, Panel, Rows, useAction, useAnswer } from '../../parts/panels.tsx'

const addable = ['clinician', 'student', 'reception'] as const
const none = { name: '', registration: '', role: '', passphrase: '' }

export function People() {
	const { value, says, again } = useAnswer('people.list', {})
	const [form, setForm] = useState(none)
	const action = useAction()
	const put = (name: keyof typeof none) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const save = async () => {
		const role = addable.find((one) => one === form.role)
		if (!form.name.trim() || !role)
			throw new Error('Name or role is empty. Fill in the name and choose the role.')
		await call('people.save', {
			name: form.name.trim(),
			registration: form.registration.trim(),
			role,
			passphrase: form.passphrase,
		})
		setForm(none)
		again()
		return 'Saved. This person unlocks with the passphrase, and should change it under My access.'
	}
	return (
		<>
			<Trouble says={says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Panel
				title="People"
				hint="Each has a passphrase of their own. Whatever they do stands under their name."
			>
				<Rows
					label="People"
					heads={['Name', 'Registration', 'Role', 'State', acts]}
					empty="Nobody yet."
					rows={(value?.people ?? []).map((person) => ({
						key: person.personId,
						cells: [
							person.name,
							person.registration,
							person.role,
							person.active ? (person.hasPin ? 'active, with PIN' : 'active') : 'taken off',
							person.active && person.role !== 'owner' ? (
								<Button
									key="off"
									size="small"
									variant="outlined"
									disabled={action.busy}
									aria-label={`Take ${person.name} off`}
									onClick={() =>
										action.run(async () => {
											await call('people.retire', {
												personId: person.personId,
												reason: 'taken off in the list of people',
											})
											again()
											return `${person.name} can no longer unlock.`
										})
									}
								>
									Take off
								</Button>
							) : (
								''
							),
						],
					}))}
				/>
			</Panel>
			<Box
				component="form"
				noValidate
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					action.run(save)
				}}
			>
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
			</Box>
		</>
	)
}
/** My passphrase and PIN, and handing this PC over to another person. */
export function MyAccess({ switched }: { switched: () => void }) {
	const { value, again } = useAnswer('session.people', {})
	const [form, setForm] = useState({ old: '', passphrase: '', pin: '', person: '', theirPin: '' })
	const action = useAction()
	const put = (name: keyof typeof form) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const people = value?.people ?? []
	const hand = async () => {
		const person = people.find((one) => one.name === form.person)
		if (!person) throw new Error('The person is not chosen. Choose one from the list.')
		try {
			await call('session.switch', { personId: person.personId, pin: form.theirPin })
		} finally {
			put('theirPin')('')
			switched()
		}
		return `${person.name} works here now.`
	}
	const clear = (words: string) => {
		setForm((now) => ({ ...now, old: '', passphrase: '', pin: '' }))
		again()
		return words
	}
	return (
		<>
			<Trouble says={action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Box
				component="form"
				noValidate
				onSubmit={(event: React.FormEvent) => {
					event.preventDefault()
					action.run(hand)
				}}
			>
				<Sheet
					title="Hand over to another person"
					hint="Those who set a PIN can take over without unlocking anew."
				>
					<Field
						label="Person"
						value={form.person}
						set={put('person')}
						options={people.map((person) => person.name)}
					/>
					<Field label="Their PIN" type="password" value={form.theirPin} set={put('theirPin')} />
					<Box>
						<Button type="submit" variant="contained" disabled={action.busy}>
							Hand over
						</Button>
					</Box>
				</Sheet>
			</Box>
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
						disabled={action.busy || !form.passphrase}
						onClick={() =>
							action.run(async () => {
								await call('session.changePassphrase', {
									old: form.old,
									passphrase: form.passphrase,
								})
								return clear('The passphrase was changed.')
							})
						}
					>
						Change passphrase
					</Button>
				</Box>
				<Box>
					<Button
						variant="outlined"
						disabled={action.busy || !form.pin}
						onClick={() =>
							action.run(async () => {
								await call('session.setPin', { passphrase: form.old, pin: form.pin })
								return clear('The PIN was set.')
							})
						}
					>
						Set PIN
					</Button>
				</Box>
			</Sheet>
		</>
	)
}
