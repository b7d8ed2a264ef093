/** What else is to be done, in the clinician's words, and which warning signs are printed. */
import { Box, Checkbox, FormControlLabel, FormGroup, Stack } from '@mui/material'
import { useState } from 'react'
import { capital, defaultWarningSigns } from '../../../../shared/engine/words/words.ts'
import type { DraftProps } from '../stepProps.ts'
import { type ActionRow, actionRows, decide, setActions } from './decisions.ts'
import { Section } from './Section.tsx'
import { Words } from './Words.tsx'

const nothing: ActionRow = { what: '', when: '', who: '' }
/** What is typed is the clinician's: the hints ask and propose nothing. */
const hint: ActionRow = {
	what: 'One thing to do',
	when: 'By a day, or how often',
	who: 'Who does it',
}
const rowKeys = ['first', 'second', 'third'] as const
export function Actions({ draft, change }: DraftProps) {
	const [rows, setRows] = useState(() => actionRows(draft))
	const put = (at: number, patch: Partial<ActionRow>) => {
		const next = rows.map((row, index) => (index === at ? { ...row, ...patch } : row))
		setRows(next)
		change((now) => setActions(now, next))
	}
	return (
		<Section title="What to do now">
			<Stack spacing={1.5}>
				{rowKeys.map((key, at) => {
					const row = rows[at] ?? nothing
					const missing = !row.what.trim() && `${row.when}${row.who}`.trim() !== ''
					return (
						<Box
							key={key}
							sx={{
								display: 'grid',
								gridTemplateColumns: { xs: '1fr', md: '3fr 2fr 2fr' },
								gap: 1.5,
							}}
						>
							<Words
								label={`What, ${at + 1}`}
								max={300}
								value={row.what}
								placeholder={hint.what}
								error={missing}
								hint={missing ? 'Say what is to be done, or clear the row.' : ''}
								set={(what) => put(at, { what })}
							/>
							<Words
								label={`When, ${at + 1}`}
								max={80}
								value={row.when}
								placeholder={hint.when}
								set={(when) => put(at, { when })}
							/>
							<Words
								label={`Who, ${at + 1}`}
								max={80}
								value={row.who}
								placeholder={hint.who}
								set={(who) => put(at, { who })}
							/>
						</Box>
					)
				})}
			</Stack>
		</Section>
	)
}
export function WarningSigns({ draft, change }: DraftProps) {
	const printed = draft.decisions.warningSigns ?? defaultWarningSigns
	const all = [
		...defaultWarningSigns,
		...printed.filter((sign) => !defaultWarningSigns.includes(sign)),
	]
	const put = (sign: string, on: boolean) =>
		change((now) => {
			const before = now.decisions.warningSigns ?? defaultWarningSigns
			return decide(now, {
				warningSigns: all.filter((known) => (known === sign ? on : before.includes(known))),
			})
		})
	return (
		<Section title="Warning signs to print">
			<FormGroup>
				{all.map((sign) => (
					<FormControlLabel
						key={sign}
						sx={{ minHeight: 44 }}
						label={capital(sign)}
						control={
							<Checkbox
								checked={printed.includes(sign)}
								onChange={(event) => put(sign, event.target.checked)}
							/>
						}
					/>
				))}
			</FormGroup>
		</Section>
	)
}
