/** The letterhead while it is typed, and its saving. */
import { useMemo, useState } from 'react'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { byField } from '../../parts/form.tsx'
import { change } from '../../query.ts'
import {
	type Choices,
	choicesOf,
	type Form,
	formOf,
	type Path,
	paths,
	problemsOf,
	readClinic,
} from './letterheadForm.ts'

export interface Letterhead {
	form: Form
	choices: Choices
	/** what is typed, as far as documents can carry it */
	clinic: Clinic | undefined
	wrong: Readonly<Record<string, string>>
	says: string
	done: string
	put: (path: Path, value: string) => void
	choose: (choices: Partial<Choices>) => void
	/** says what is wrong with something chosen, or '' */
	setSays: (says: string) => void
	save: () => Promise<void>
}
export function useLetterhead(held: Clinic): Letterhead {
	const [form, setForm] = useState(() => formOf(held))
	const [choices, setChoices] = useState(() => choicesOf(held))
	const [wrong, setWrong] = useState<Record<string, string>>({})
	const [says, setSays] = useState('')
	const [done, setDone] = useState('')
	const read = useMemo(() => readClinic(form, choices), [form, choices])
	const save = async () => {
		setDone('')
		if (!read.success) {
			const problems = problemsOf(form, read)
			setWrong(problems)
			return setSays(Object.values(problems).join(' '))
		}
		try {
			await change('clinic.save', read.data)
			setSays('')
			setDone('Saved. Documents written from now on carry it; signed ones stay as they are.')
		} catch (error) {
			const { fields, says: words } = byField(error, '', paths)
			setWrong(fields)
			setSays(words)
		}
	}
	return {
		form,
		choices,
		clinic: read.data,
		wrong,
		says,
		done,
		put: (path, value) => {
			setDone('')
			setForm((now) => ({ ...now, [path]: value }))
			setWrong(({ [path]: _, ...rest }) => rest)
		},
		choose: (chosen) => setChoices((now) => ({ ...now, ...chosen })),
		setSays,
		save,
	}
}
