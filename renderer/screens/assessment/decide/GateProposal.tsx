/** The gate: what is held and until when, what is to be done now, and what was done about it. */
import { Alert, AlertTitle, Box, Button, Stack, Typography } from '@mui/material'
import type { Gate } from '../../../../shared/engine/findings/assessment.ts'
import { refers } from '../../../../shared/engine/report/signing.ts'
import { actionWords, capital } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { isNotEstablished } from './answering.ts'
import { decide } from './decisions.ts'
import { heldBy } from './heldWords.ts'
import type { AskedProps } from './stepTypes.ts'
import { Words } from './Words.tsx'

export function GateProposal(props: AskedProps) {
	const { assessment, outcomes } = props
	const { gate } = assessment.prescription
	return (
		<Stack spacing={1.5}>
			<Held gate={gate} />
			{isNotEstablished(gate) && (
				<Typography>
					Not established: core questions were neither answered nor set aside. Ask them on Flags, or
					set this aside with a reason.
				</Typography>
			)}
			<Box>
				<Button variant="outlined" aria-keyshortcuts="O" onClick={outcomes}>
					<Box component="kbd" aria-hidden sx={{ font: 'inherit', opacity: 0.7, mr: 1 }}>
						O
					</Box>
					Questions and outcomes on Flags
				</Button>
			</Box>
			<Done {...props} />
		</Stack>
	)
}
function Held({ gate }: { gate: Gate }) {
	const rows = heldBy(gate)
	if (rows.length === 0) return null
	const signs = Map.groupBy(
		rows,
		({ sign, since }) => `${capital(sign)}, since ${dayInWords(since)}`,
	)
	return (
		<Box>
			<Typography sx={{ fontWeight: 600 }}>Held</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{[...signs].map(([sign, holds]) => (
					<li key={sign}>
						{sign}
						{holds.map(({ key, what, until }) => (
							<Typography key={key} variant="body2">
								{capital(what)}: until {until}.
							</Typography>
						))}
					</li>
				))}
			</Box>
		</Box>
	)
}
/**
 * What was done about the signs that stop is written before anything can be signed. The signs stand
 * below, among the findings.
 */
function Done({ assessment, draft, change }: AskedProps) {
	if (!refers(assessment)) return null
	const done = draft.decisions.referralDone ?? ''
	return (
		<Stack spacing={1.5}>
			<Alert severity="error" role="alert">
				<AlertTitle>Stop: {actionWords[assessment.screening.action]}</AlertTitle>
				<Typography variant="body2">
					Act on this before footwear. The record cannot be signed until you write what was done.
				</Typography>
			</Alert>
			<Words
				label="What was done about it"
				lines
				required
				max={1000}
				error={!done.trim()}
				value={done}
				set={(text) => change((now) => decide(now, { referralDone: text || undefined }))}
			/>
		</Stack>
	)
}
