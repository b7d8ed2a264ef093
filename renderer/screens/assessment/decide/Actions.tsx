/** What else is to be done, in the clinician's words, and which warning signs are printed. */
import { Box, Checkbox, FormControlLabel, FormGroup, Stack } from '@mui/material'
import { useState } from 'react'
import { mayStretchCalf } from '../../../../shared/engine/asked/stretching.ts'
import { openGate } from '../../../../shared/engine/facts/held.ts'
import { capital, defaultWarningSigns } from '../../../../shared/engine/words/words.ts'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import { type ActionRow, actionRows, decide, setActions } from './decisions.ts'
import { Section } from './Section.tsx'
import { Words } from './Words.tsx'

const nothing: ActionRow = { what: '', when: '', who: '' }
const stretching = 'Calf stretching, knee straight and bent'
const actionHints: readonly ActionRow[] = [
	{
		what: 'Change to a pair with room before the longest toe',
		when: 'before the next match',
		who: 'player and guardian',
	},
	{
		what: stretching,
		when: 'daily until the review',
		who: 'player',
	},
	{ what: 'Measure both feet again', when: 'at the review date', who: 'clinic' },
]
export function Actions({ draft, change, assessment }: AssessedProps) {
	const gate = assessment?.prescription.gate ?? openGate
	const hints = actionHints.map((hint) =>
		hint.what === stretching && !mayStretchCalf(draft.visit, gate) ? nothing : hint,
	)
	const [rows, setRows] = useState(() => actionRows(draft))
	const put = (at: number, patch: Partial<ActionRow>) => {
		const next = rows.map((row, index) => (index === at ? { ...row, ...patch } : row))
		setRows(next)
		change((now) => setActions(now, next))
	}
	return (
		<Section title="What to do now">
			<Stack spacing={1.5}>
				{hints.map((hint, at) => {
					const row = rows[at] ?? nothing
					const missing = !row.what.trim() && `${row.when}${row.who}`.trim() !== ''
					return (
						<Box
							key={actionHints[at]?.what}
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
