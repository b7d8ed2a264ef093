/** One line of the list after a restore: its choices, and a new passphrase where one is needed. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Field, Form } from '../../parts/form.tsx'
import { NewPassphrase } from '../../parts/NewSecret.tsx'
import { notTyped, passphraseProblems, type TwiceProblems } from '../../parts/secrets.ts'

type Line = OutputOf<'backups.cameBack'>['lists'][number]['lines'][number]
type Choice = Line['choices'][number]['choice']

export function DecideLine({
	line: { lineId, choices },
	busy,
	decide,
	close,
}: {
	line: Line
	busy: boolean
	decide: (decision: { lineId: string; choice: Choice; passphrase?: string }) => void
	close: () => void
}) {
	const [says, setSays] = useState(choices[0]?.says ?? '')
	const [typed, setTyped] = useState(notTyped)
	const [wrong, setWrong] = useState<TwiceProblems>({})
	const chosen = choices.find((choice) => choice.says === says)
	const submit = () => {
		if (!chosen) return
		const { choice, asksPassphrase } = chosen
		const problems = asksPassphrase ? passphraseProblems('New passphrase', typed) : {}
		setWrong(problems)
		if (problems.once !== undefined || problems.again !== undefined) return
		decide({ lineId, choice, ...(asksPassphrase && { passphrase: typed.once }) })
	}
	return (
		<Form sx={{ display: 'grid', gap: 2, minWidth: 300 }} submit={submit}>
			<Field
				label="Decision"
				value={says}
				set={setSays}
				options={choices.map((choice) => choice.says)}
			/>
			{chosen?.asksPassphrase && (
				<NewPassphrase
					title="New passphrase"
					typed={typed}
					put={setTyped}
					wrong={wrong}
					also="the person changes it at the first unlock"
				/>
			)}
			<Box sx={{ display: 'flex', gap: 1 }}>
				<Button
					type="submit"
					variant="contained"
					disabled={busy || !chosen || (chosen.asksPassphrase && !typed.once)}
				>
					Decide this
				</Button>
				<Button onClick={close}>Not now</Button>
			</Box>
		</Form>
	)
}
