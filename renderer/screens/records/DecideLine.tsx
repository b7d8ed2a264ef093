/** One line of the list after a restore: its choices, and a new passphrase where one is needed. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Field, Form } from '../../parts/form.tsx'

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
	const [passphrase, setPassphrase] = useState('')
	const chosen = choices.find((choice) => choice.says === says)
	const submit = () => {
		if (!chosen) return
		const { choice, asksPassphrase } = chosen
		decide({ lineId, choice, ...(asksPassphrase && { passphrase }) })
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
				<Field
					label="New passphrase"
					type="password"
					autoComplete="new-password"
					value={passphrase}
					set={setPassphrase}
					hint="The person changes it at the first unlock."
				/>
			)}
			<Box sx={{ display: 'flex', gap: 1 }}>
				<Button
					type="submit"
					variant="contained"
					disabled={busy || !chosen || (chosen.asksPassphrase && !passphrase)}
				>
					Decide this
				</Button>
				<Button onClick={close}>Not now</Button>
			</Box>
		</Form>
	)
}
