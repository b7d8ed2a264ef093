/** The set-up while it is filled in, and what it ends with: the recovery key. */
import { useState } from 'react'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { call } from '../../host.ts'
import { byField } from '../../parts/form.tsx'
import { checkForm, clinicPaths, type Form } from './clinicForm.ts'

export interface SettingUp {
	form: Form
	logo: Clinic['logo']
	/** what is wrong with a field, by its path */
	wrong: Readonly<Record<string, string>>
	says: string
	busy: boolean
	/** '' until the clinic is set up */
	recoveryKey: string
	put: (path: string, value: string) => void
	putLogo: (logo: Clinic['logo'], wrong?: string) => void
	setUp: () => Promise<void>
}
/** The colour of the letterhead, until another one is chosen. */
const firstColour = '#1f5f5b'
const without = (wrong: Readonly<Record<string, string>>, path: string) => {
	const { [path]: _, ...rest } = wrong
	return rest
}
export function useSetup(made: () => void): SettingUp {
	const [form, setForm] = useState<Form>({ colour: firstColour })
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [logo, setLogo] = useState<Clinic['logo']>()
	const [busy, setBusy] = useState(false)
	const [recoveryKey, setRecoveryKey] = useState('')
	const send = async (clinic: Clinic) => {
		setBusy(true)
		try {
			const answer = await call('session.setUp', { clinic, passphrase: form.passphrase ?? '' })
			setRecoveryKey(answer.recoveryKey)
			made()
		} catch (error) {
			const { fields, says: words } = byField(error, 'clinic', [...clinicPaths, 'passphrase'])
			setWrong(fields)
			setSays([words, ...Object.values(fields)].join(' '))
		} finally {
			setBusy(false)
		}
	}
	return {
		form,
		logo,
		wrong,
		says,
		busy,
		recoveryKey,
		put: (path, value) => {
			setForm((now) => ({ ...now, [path]: value }))
			setWrong((now) => without(now, path))
		},
		putLogo: (chosen, problem) => {
			setLogo(chosen)
			setWrong((now) => ({ ...without(now, 'logo'), ...(problem ? { logo: problem } : {}) }))
		},
		setUp: async () => {
			const { clinic, problems } = checkForm(form, logo)
			setWrong((now) => ({ ...(now.logo ? { logo: now.logo } : {}), ...problems }))
			setSays(Object.values(problems).join(' '))
			if (clinic && Object.keys(problems).length === 0) await send(clinic)
		},
	}
}
