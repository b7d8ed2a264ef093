/** A consent as it was given or refused: for what, to whom, by whom, until when. */
import { Box, Button, Stack } from '@mui/material'
import { type FormEvent, useState } from 'react'
import {
	grantedBy,
	type NewConsent,
	newConsentSchema,
	type Purpose,
	purposeNames,
	purposes,
} from '../../../shared/desk/records/consent.ts'
import { today } from '../../parts/dates.ts'
import { Field, Sheet } from '../../parts/form.tsx'
import { change, type HostAction } from '../../query.ts'

const empty = () => ({
	purpose: '',
	recipient: '',
	decision: 'permit',
	name: '',
	relation: '',
	method: 'verbal',
	given: today(),
	expires: '',
	capacityNote: '',
})
type Typed = ReturnType<typeof empty>

/** @throws Error in words where something needed is empty */
function consentOf(form: Typed): NewConsent {
	const read = newConsentSchema.safeParse({
		purpose: form.purpose,
		recipient: form.recipient.trim(),
		decision: form.decision,
		grantor: { name: form.name.trim(), relation: form.relation },
		method: form.method,
		given: form.given,
		...(form.expires ? { expires: form.expires } : {}),
		...(form.capacityNote.trim() ? { capacityNote: form.capacityNote.trim() } : {}),
	})
	if (!read.success)
		throw new Error(
			'Purpose, who gave it, relation and day are needed. Choose or fill in what is empty.',
		)
	return read.data
}
type Put = (name: keyof Typed) => (text: string) => void

function ConsentFields({ form, put }: { form: Typed; put: Put }) {
	return (
		<Sheet title="Record a consent">
			<Field
				label="Purpose"
				value={form.purpose}
				set={put('purpose')}
				options={purposeNames}
				hint={form.purpose ? purposes[form.purpose as Purpose].says : undefined}
			/>
			<Field
				label="Recipient"
				value={form.recipient}
				set={put('recipient')}
				optional
				hint="The one person or place it is for; empty for photos, squad summary and teaching."
			/>
			<Field
				label="Decision"
				value={form.decision}
				set={put('decision')}
				options={['permit', 'deny']}
			/>
			<Field label="Given by" value={form.name} set={put('name')} />
			<Field label="Relation" value={form.relation} set={put('relation')} options={grantedBy} />
			<Field
				label="How"
				value={form.method}
				set={put('method')}
				options={['verbal', 'written', 'e-sign']}
			/>
			<Field label="Given on" type="date" value={form.given} set={put('given')} />
			<Field
				label="Runs out on"
				type="date"
				value={form.expires}
				set={put('expires')}
				optional
				hint="May be left empty."
			/>
			<Field
				label="Note on capacity"
				value={form.capacityNote}
				set={put('capacityNote')}
				optional
				rows={2}
				hint="For a young player who consents alone: why they can decide this."
			/>
		</Sheet>
	)
}
export function RecordConsent({
	playerId,
	action: { busy, run },
}: {
	playerId: string
	action: HostAction
}) {
	const [form, setForm] = useState(empty)
	const put: Put = (name) => (text) => setForm((now) => ({ ...now, [name]: text }))
	const add = async () => {
		await change('consents.record', { playerId, consent: consentOf(form) })
		setForm(empty())
		return 'Recorded.'
	}
	return (
		<Stack
			component="form"
			noValidate
			spacing={2}
			onSubmit={(event: FormEvent) => {
				event.preventDefault()
				run(add)
			}}
		>
			<ConsentFields form={form} put={put} />
			<Box>
				<Button type="submit" variant="contained" disabled={busy}>
					Record consent
				</Button>
			</Box>
		</Stack>
	)
}
