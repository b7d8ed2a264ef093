/**
 * The insert: each element proposed for each foot, accepted, changed or dropped with its reason;
 * stops are released limb by limb.
 */
import { Alert, AlertTitle, Box, Button, TextField, Typography } from '@mui/material'
import { useMemo, useState } from 'react'
import {
	type DecidedInsert,
	decidedInsert,
	waitingLimbs,
} from '../../../../shared/engine/insert/decided.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { clinicProtocol as protocol } from '../../../parts/clinicProtocol.ts'
import type { AssessedProps } from '../stepProps.ts'
import { decide } from './decisions.ts'
import { InsertFoot } from './InsertFoot.tsx'
import { footTitle } from './insertDecisions.ts'

export function Insert({ draft, change, assessment }: AssessedProps) {
	const result = useMemo(
		() =>
			assessment ? decidedInsert(draft.visit, assessment, draft.decisions, protocol) : undefined,
		[draft.visit, draft.decisions, assessment],
	)
	if (!assessment || !result) return null
	return (
		<Box component="section" aria-label="Insert">
			<Typography variant="h2" sx={{ mb: 1 }}>
				Insert
			</Typography>
			<Box sx={{ display: 'grid', gap: 2 }}>
				<Stops draft={draft} change={change} assessment={assessment} result={result} />
				{result.result.conflicts.map((conflict) => (
					<Alert key={conflict.id} severity="warning">
						{conflict.says}
					</Alert>
				))}
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: { xs: '1fr', lg: '1fr 1fr' },
						gap: 2,
						alignItems: 'start',
					}}
				>
					{bothSides.map((side) => (
						<InsertFoot key={side} side={side} result={result} draft={draft} change={change} />
					))}
				</Box>
				{result.result.wearIn.length > 0 ? (
					<Box>
						<Typography variant="h3">Wearing in</Typography>
						{result.result.wearIn.map((step) => (
							<Typography key={step.when}>
								{step.when}: {step.says}
							</Typography>
						))}
					</Box>
				) : null}
			</Box>
		</Box>
	)
}
function Stops({ draft, change, assessment, result }: AssessedProps & { result: DecidedInsert }) {
	const [texts, setTexts] = useState<Record<string, string>>({})
	if (!assessment) return null
	return waitingLimbs(assessment, result, draft.decisions).map(({ side, items, rotation }) => (
		<Alert key={side} severity="error">
			<AlertTitle>
				{footTitle[side]}: no insert{rotation ? ' and no rotation' : ''} until what was done is
				recorded
			</AlertTitle>
			<TextField
				fullWidth
				multiline
				label={`What was done about the ${side} side`}
				value={texts[side] ?? ''}
				onChange={(event) => setTexts((now) => ({ ...now, [side]: event.target.value }))}
				slotProps={{ inputLabel: { shrink: true }, htmlInput: { maxLength: 1000 } }}
				sx={{ my: 1 }}
			/>
			<Button
				variant="contained"
				color="error"
				disabled={!texts[side]?.trim()}
				onClick={() =>
					change((now) =>
						decide(now, {
							screeningDone: [
								...(now.decisions.screeningDone ?? []),
								{
									side,
									done: texts[side]?.trim() ?? '',
									items,
								},
							],
							...(rotation && !now.decisions.referralDone?.trim()
								? { referralDone: texts[side]?.trim() }
								: {}),
						}),
					)
				}
			>
				Record for the {side} side
			</Button>
		</Alert>
	))
}
