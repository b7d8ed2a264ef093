/**
 * The gate as it stands. What is held comes first and cannot be missed: what to do now, what waits,
 * by which sign, and who or what ends it. What is not established names the questions, each one
 * press away.
 */
import { Box, Button, Typography } from '@mui/material'
import type { Gate, GatePart } from '../../../../shared/engine/findings/gate.ts'
import type { Action } from '../../../../shared/engine/findings/screening-result.ts'
import { coreQuestionNames } from '../../../../shared/engine/words/en/gate.ts'
import { actionWords, capital } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { endings, gateParts, type HeldBySign, heldBySign, sinceOf } from '../flagsHeld.ts'
import { focusIn } from '../flagsKeys.ts'
import { nameOfSign } from '../flagsTyped.ts'
import { partNames, stateWords, unaskedIn } from './gateFacts.ts'
import { Figure, Quiet, ResultSheet } from './parts/ResultSheet.tsx'
import type { ResultProps } from './resultProps.ts'

/** What cannot wait for the footwear, held or not. */
const urgent: readonly Action[] = ['imaging', 'same-day', 'emergency']

export function FlagsResult({ assessment, visit }: ResultProps) {
	const { gate } = assessment.prescription
	const signs = heldBySign(gate)
	const { action } = assessment.screening
	return (
		<ResultSheet label="The gate">
			{signs.length > 0 || urgent.includes(action) ? (
				<Box
					role="status"
					sx={{
						border: 2,
						borderLeft: 8,
						borderColor: 'error.main',
						borderRadius: 1,
						bgcolor: 'background.paper',
						px: 2,
						py: 1.25,
					}}
				>
					<Typography
						sx={{ fontSize: '1.5rem', fontWeight: 700, color: 'error.main', lineHeight: 1.2 }}
					>
						{action === 'proceed' ? 'Held' : `Now: ${actionWords[action]}`}
					</Typography>
					{signs.map((sign) => (
						<Sign key={`${sign.rule} ${sign.side}`} sign={sign} today={visit.visitDate} />
					))}
				</Box>
			) : (
				action !== 'proceed' && (
					<Figure name="To do" says={capital(actionWords[action])} lines={[]} />
				)
			)}
			<Parts gate={gate} />
			<Unasked gate={gate} />
		</ResultSheet>
	)
}
function Sign({ sign, today }: { sign: HeldBySign; today: string }) {
	const name = nameOfSign(sign)
	const since = sinceOf(sign)
	const record = () => focusIn(document.querySelector(`[data-held="${CSS.escape(name)}"]`))
	return (
		<Box sx={{ mt: 1 }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', columnGap: 2 }}>
				<Typography sx={{ fontWeight: 600, flex: '1 1 12rem' }}>
					{name}
					{since !== undefined && since < today ? `, since ${dayInWords(since)}` : ''}
				</Typography>
				<Button
					variant="outlined"
					color="error"
					size="small"
					aria-label={`To its outcome: ${name}`}
					onClick={record}
				>
					To its outcome
				</Button>
			</Box>
			{endings(sign.holds).map((line) => (
				<Typography key={line} variant="body2">
					{line}
				</Typography>
			))}
		</Box>
	)
}
/** The player, the left limb, the right limb. */
function Parts({ gate }: { gate: Gate }) {
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(11rem, 100%), 1fr))',
				columnGap: 3,
				rowGap: 1,
			}}
		>
			{gateParts.map((part) => (
				<Part key={part} name={partNames[part]} part={gate[part]} />
			))}
		</Box>
	)
}
const Part = ({ name, part }: { name: string; part: GatePart }) => (
	<Box>
		<Typography variant="body2" color="text.secondary" component="h2">
			{name}
		</Typography>
		<Typography
			sx={{
				fontSize: '1.2rem',
				fontWeight: 700,
				...(part.state === 'held' ? { color: 'error.main' } : {}),
			}}
		>
			{stateWords(part)}
		</Typography>
	</Box>
)
function Unasked({ gate }: { gate: Gate }) {
	const unasked = unaskedIn(gate)
	const clear = gateParts.every((part) => gate[part].state === 'nothing-found')
	if (clear) return <Quiet>By the questions that were asked. That is no clearance.</Quiet>
	if (unasked.length === 0) return null
	return (
		<Box>
			<Typography sx={{ fontWeight: 600 }}>Not asked yet</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.75, mt: 0.5 }}>
				{unasked.map((id) => (
					<Button
						key={id}
						variant="outlined"
						size="small"
						onClick={() => focusIn(document.querySelector(`[data-core="${id}"]`))}
					>
						{capital(coreQuestionNames[id] ?? id)}
					</Button>
				))}
			</Box>
		</Box>
	)
}
