/** First start: letterhead, clinician, passphrase; then the recovery key to keep on paper. */
import { Alert, Button, Checkbox, FormControlLabel, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import { clinicSchema } from '../../../shared/clinic.ts'
import { call, wordsOf } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'

const fields = [['name', 'Clinic name'], ['address1', 'Address line 1'], ['address2', 'Address line 2'], ['phone', 'Phone'], ['email', 'E-mail'], ['clinician', 'Clinician name'], ['registration', 'Registration number'], ['passphrase', 'Passphrase'], ['again', 'Passphrase again']] as const
export function Setup({ done }: { done: () => void }) {
	const [form, setForm] = useState<Record<string, string>>({ colour: '#1f5f5b' })
	const [key, setKey] = useState('')
	const [kept, setKept] = useState(false)
	const [says, setSays] = useState('')
	const of = (name: string) => form[name]?.trim() ?? ''
	const go = async () => {
		if (form.passphrase !== form.again) return setSays('Passphrase: the two entries differ. Type the same passphrase twice.')
		const clinic = clinicSchema.safeParse({ format: 'lastwright-clinic', version: 1, name: of('name'), address: [of('address1'), of('address2')].filter(Boolean), phone: of('phone') || undefined, email: of('email') || undefined, colour: of('colour'), clinician: { name: of('clinician'), registration: of('registration') } })
		if (!clinic.success) return setSays(clinic.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}.`).join(' '))
		try { setKey((await call('session.setUp', { clinic: clinic.data, passphrase: form.passphrase ?? '' })).recoveryKey) } catch (error) { setSays(wordsOf(error)) }
	}
	if (key) return <Stack spacing={2}><Typography variant="h1">Recovery key</Typography><Alert severity="warning">Without this key a forgotten passphrase cannot be replaced. Keep it on paper.</Alert><Typography variant="h2" component="p">{key}</Typography><Button onClick={() => window.print()}>Print</Button><FormControlLabel control={<Checkbox checked={kept} onChange={(event) => setKept(event.target.checked)} />} label="I have it on paper" /><Button variant="contained" disabled={!kept} onClick={done}>Continue</Button></Stack>
	return <Stack component="form" spacing={1} sx={{ maxWidth: 560 }} onSubmit={(event) => { event.preventDefault(); void go() }}>
		<Typography variant="h1">Set up the clinic</Typography>
		{fields.map(([name, label]) => <Field key={name} label={label} type={name === 'passphrase' || name === 'again' ? 'password' : 'text'} value={form[name] ?? ''} set={(value) => setForm({ ...form, [name]: value })} />)}
		<Field label="Clinic colour" type="color" value={form.colour ?? ''} set={(colour) => setForm({ ...form, colour })} />
		<Trouble says={says} /><Button type="submit" variant="contained">Set up</Button>
	</Stack>
}
