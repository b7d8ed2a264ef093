/** One's own passphrase and PIN, each behind the present passphrase and typed twice. */
import { Box, Button } from '@mui/material'
import { type ReactNode, useState } from 'react'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { NewPassphrase, NewPin } from '../../parts/NewSecret.tsx'
import {
	notTyped,
	passphraseProblems,
	pinProblems,
	refuseProblems,
	type Twice,
} from '../../parts/secrets.ts'
import { change, type HostAction } from '../../query.ts'

interface Typed {
	old: string
	next: Twice
}
const empty: Typed = { old: '', next: notTyped }
interface SecretProps {
	action: HostAction
	title: string
	button: string
	/** makes the change. @returns what was done, in words */
	save: (typed: Typed) => Promise<string>
	fields: (next: Twice, put: (next: Twice) => void) => ReactNode
}
function SecretForm({ action: { busy, run }, title, button, save, fields }: SecretProps) {
	const [typed, setTyped] = useState(empty)
	const submit = async () => {
		if (!typed.old) throw new Error('Present passphrase is empty. Type it first.')
		const done = await save(typed)
		setTyped(empty)
		return done
	}
	return (
		<Form label={title} submit={() => run(submit)}>
			<Sheet title={title}>
				<Field
					label="Present passphrase"
					type="password"
					autoComplete="current-password"
					value={typed.old}
					set={(old) => setTyped((now) => ({ ...now, old }))}
				/>
				<Box />
				{fields(typed.next, (next) => setTyped((now) => ({ ...now, next })))}
				<Box>
					<Button type="submit" variant="outlined" disabled={busy || !typed.next.once}>
						{button}
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
async function changePassphrase({ old, next }: Typed): Promise<string> {
	refuseProblems(passphraseProblems('New passphrase', next))
	await change('session.changePassphrase', { old, passphrase: next.once })
	return 'The passphrase was changed.'
}
async function setUpPin({ old, next }: Typed): Promise<string> {
	refuseProblems(pinProblems('New PIN', next))
	await change('session.setPin', { passphrase: old, pin: next.once })
	return 'The PIN was set.'
}
export const OwnPassphrase = ({ action }: { action: HostAction }) => (
	<SecretForm
		action={action}
		title="My passphrase"
		button="Change passphrase"
		save={changePassphrase}
		fields={(typed, put) => <NewPassphrase title="New passphrase" typed={typed} put={put} />}
	/>
)
export const OwnPin = ({ action }: { action: HostAction }) => (
	<SecretForm
		action={action}
		title="My PIN"
		button="Set PIN"
		save={setUpPin}
		fields={(typed, put) => <NewPin title="New PIN" typed={typed} put={put} />}
	/>
)
