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
	const { assessment, goTo } = props
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
				<Button variant="outlined" onClick={() => goTo('Flags')}>
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
	return (
		<Box>
			<Typography sx={{ fontWeight: 600 }}>Held</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{rows.map(({ key, sign, what, until, since }) => (
					<li key={key}>
						{capital(sign)}, since {dayInWords(since)}: {what}, until {until}.
					</li>
				))}
			</Box>
		</Box>
	)
}
/** The signs that stop: what was done about them is written before anything can be signed. */
function Done({ assessment, draft, change }: AskedProps) {
	if (!refers(assessment)) return null
	const { screening } = assessment
	const done = draft.decisions.referralDone ?? ''
	const signs = screening.items.filter(
		({ state, action }) => state === 'yes' && action === screening.action,
	)
	return (
		<Stack spacing={1.5}>
			<Alert severity="error" role="alert">
				<AlertTitle>Stop: {actionWords[screening.action]}</AlertTitle>
				{signs.map((sign) => (
					<Typography key={`${sign.id} ${sign.side}`} variant="body2">
						{sign.says}
						{sign.side === 'left' || sign.side === 'right' ? ` (${sign.side})` : ''}
					</Typography>
				))}
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
