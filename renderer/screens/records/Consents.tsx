/** The consents of one player: per purpose and recipient; without one the answer is no. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import {
	type Consent,
	grantedBy,
	type NewConsent,
	newConsentSchema,
	type Purpose,
	purposeNames,
	purposes,
} from '../../../shared/desk/records/consent.ts'
import { call } from '../../host.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { Field, Sheet, Trouble } from '../../parts/form.tsx'
import { acts, Panel, Rows, useAction, useAnswer, Way } from '../../parts/panels.tsx'

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
const state = (one: Consent) =>
	one.withdrawn
		? `Withdrawn ${dayInWords(one.withdrawn)} by ${one.withdrawnBy}`
		: one.decision === 'deny'
			? 'Refused'
			: one.expires && one.expires <= today()
				? `Ran out ${dayInWords(one.expires)}`
				: 'Given'

export function Consents({ playerId }: { playerId: string }) {
	const player = useAnswer('players.open', { playerId })
	const { value, says, again } = useAnswer('consents.list', { playerId })
	const [form, setForm] = useState(empty)
	const [by, setBy] = useState('')
	const action = useAction()
	const put = (name: keyof ReturnType<typeof empty>) => (text: string) =>
		setForm((now) => ({ ...now, [name]: text }))
	const add = async () => {
		const draft = {
			purpose: form.purpose,
			recipient: form.recipient.trim(),
			decision: form.decision,
			grantor: { name: form.name.trim(), relation: form.relation },
			method: form.method,
			given: form.given,
			...(form.expires ? { expires: form.expires } : {}),
			...(form.capacityNote.trim() ? { capacityNote: form.capacityNote.trim() } : {}),
		}
		const read = newConsentSchema.safeParse(draft)
		if (!read.success)
			throw new Error(
				'Purpose, who gave it, relation and day are needed. Choose or fill in what is empty.',
			)
		await call('consents.record', { playerId, consent: read.data as NewConsent })
		setForm(empty())
		again()
		return 'Recorded.'
	}
	const withdraw = (one: Consent) => async () => {
		if (!by.trim())
			throw new Error('Who withdraws is empty. Write the name in the field above the list.')
		await call('consents.withdraw', {
			playerId,
			consentId: one.consentId,
			withdrawn: today(),
			withdrawnBy: by.trim(),
		})
		again()
		return 'Withdrawn as of today.'
	}
	const name = player.value
		? `${player.value.player.givenName} ${player.value.player.familyName}`
		: ''
	return (
		<Stack spacing={3}>
			<Box>
				<Typography variant="h1">Consents{name ? ` of ${name}` : ''}</Typography>
				<Way to={`#/players/${playerId}`}>Back to the player</Way>
			</Box>
			<Trouble says={says || player.says || action.says} />
			{action.done && (
				<Alert severity="success" role="status">
					{action.done}
				</Alert>
			)}
			<Panel
				title="On record"
				hint="Coach and club, e-mail, photos, squad summary and teaching are denied until someone permits them."
			>
				{value?.consents.some((consent) => !consent.withdrawn) && (
					<Box sx={{ maxWidth: 360, displayPrint: 'none' }}>
						<Field
							label="Who withdraws"
							value={by}
							set={setBy}
							optional
							hint="Needed only to withdraw one below."
						/>
					</Box>
				)}
				<Rows
					label="Consents"
					heads={['Purpose', 'Recipient', 'Given by', 'On', 'Until', 'State', acts]}
					empty="None yet: every purpose is denied. Record what the player or guardian said below."
					rows={(value?.consents ?? []).map((consent) => ({
						key: consent.consentId,
						cells: [
							purposes[consent.purpose].says,
							consent.recipient || 'none named',
							`${consent.grantor.name} (${consent.grantor.relation})`,
							dayInWords(consent.given),
							consent.expires ? dayInWords(consent.expires) : 'no end',
							state(consent),
							consent.withdrawn ? (
								''
							) : (
								<Button
									key="withdraw"
									size="small"
									variant="outlined"
									disabled={action.busy}
									aria-label={
										'Withdraw ' +
										`${purposes[consent.purpose].says}${consent.recipient ? ` for ${consent.recipient}` : ''}`
									}
									onClick={() => action.run(withdraw(consent))}
								>
									Withdraw
								</Button>
							),
						],
					}))}
				/>
			</Panel>
			<Stack
				component="form"
				noValidate
				spacing={2}
				onSubmit={(event) => {
					event.preventDefault()
					action.run(add)
				}}
			>
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
				<Box>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Record consent
					</Button>
				</Box>
			</Stack>
		</Stack>
	)
}
