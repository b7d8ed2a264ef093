/** A pair that is to be bought, planned for the season from a day on: in one step, before signing. */
import { Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { RankedModel, RolePair } from '../../../../shared/engine/findings/assessment.ts'
import {
	plannedFor,
	withoutPlanned,
	withPlanned,
} from '../../../../shared/engine/prescription/planned-pair.ts'
import { fullDay } from '../../../../shared/engine/words/en/format.ts'
import { DateField } from '../../../parts/DateField.tsx'
import { parseDate } from '../../../parts/parseDate.ts'
import { Choice } from './Choice.tsx'
import type { AskedProps } from './stepTypes.ts'

interface PlanPairProps extends Pick<AskedProps, 'draft' | 'change'> {
	/** The pair as the clinician settled it. */
	pair: RolePair
	/** Models to try for it, the first first. */
	models: readonly RankedModel[]
}
export function PlanPair({ draft, change, pair, models }: PlanPairProps) {
	const planned = plannedFor(draft.visit, pair)
	const [model, setModel] = useState('')
	const [day, setDay] = useState(draft.visit.visitDate)
	const read = parseDate(day)
	const chosen = models.find(({ id }) => id === model)
	const sole = chosen?.sole ?? pair.sole
	if (planned)
		return (
			<Stack direction="row" useFlexGap sx={{ gap: 1, flexWrap: 'wrap', alignItems: 'center' }}>
				<Typography>
					Planned in the season from {fullDay(planned.newFrom ?? draft.visit.visitDate)}:{' '}
					{planned.name}.
				</Typography>
				<Button
					size="small"
					aria-label={`Take ${planned.name} out of the season`}
					onClick={() => change((now) => ({ ...now, visit: withoutPlanned(now.visit, pair) }))}
				>
					Take out
				</Button>
			</Stack>
		)
	const plan = () => {
		if (!read.ok) return
		change((now) => ({ ...now, visit: withPlanned(now.visit, pair, chosen, read.iso) }))
	}
	return (
		<Stack
			direction="row"
			useFlexGap
			role="group"
			aria-label="Plan this pair in the season"
			data-own-keys=""
			sx={{ gap: 1.5, flexWrap: 'wrap', alignItems: 'center' }}
		>
			{models.length > 0 && (
				<Choice
					label="Model to plan"
					value={model}
					none="not chosen yet"
					options={models.map(({ id, name }) => [id, name] as const)}
					set={setModel}
				/>
			)}
			<Box sx={{ width: 220 }}>
				<DateField size="small" label="Worn from" value={day} set={setDay} />
			</Box>
			<Button variant="outlined" disabled={!read.ok || sole === undefined} onClick={plan}>
				{read.ok ? `Plan this pair from ${fullDay(read.iso)}` : 'Plan this pair'}
			</Button>
			{sole === undefined && (
				<Typography color="text.secondary">
					To plan it, choose its sole first, with Change.
				</Typography>
			)}
		</Stack>
	)
}
