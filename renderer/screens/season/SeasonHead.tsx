/** On which findings a season rests, and planning it. */
import { Box, Button, LinearProgress, Typography } from '@mui/material'
import { levels } from '../../../shared/engine/season/problem/levels.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { useHost } from '../../query.ts'
import { Day } from './fields.tsx'
import { Proven } from './Proven.tsx'
import type { Planning } from './usePlanning.ts'
import type { Opened } from './useSeasonEdits.ts'
import type { Told } from './useTold.ts'

/** How often the screen asks how far the planning is. */
const askEveryMs = 250

interface SeasonHeadProps {
	playerId: string
	opened: Opened
	season: Season | undefined
	planning: Planning
	told: Told
}
/** The day from which it is planned, and the button. */
export function PlanActs(props: SeasonHeadProps) {
	const { planning } = props
	return (
		<Box
			sx={{
				display: 'flex',
				alignItems: 'start',
				gap: 1,
				flexWrap: 'wrap',
				'& > .MuiButton-root': { mt: '1.5rem' },
			}}
		>
			<Box sx={{ width: '14rem' }}>
				<Day
					label="Plan from"
					name="Plan from"
					value={planning.from}
					set={planning.setFrom}
					hint="Sessions before it stay"
				/>
			</Box>
			<PlanButton {...props} />
		</Box>
	)
}
/** On which findings the season rests, and how far its plan is proven. */
export const SeasonLine = ({ opened }: { opened: Opened }) => (
	<>
		{basisWords(opened)}
		{opened.planned && <Proven plan={opened.planned.plan} />}
	</>
)

function basisWords({ basis }: Opened): string {
	if (!basis) return ''
	const from = basis.from === 'draft' ? 'open assessment' : 'visit'
	return `Pairs and findings of the ${from} of ${dayInWords(basis.visitDate)}`
}

function PlanButton({ playerId, opened, season, planning, told }: SeasonHeadProps) {
	if (planning.running)
		return (
			<Button
				variant="outlined"
				onClick={() => void call('season.cancel', { playerId }).catch(told.refuse)}
			>
				Cancel
			</Button>
		)
	return (
		<Button
			ref={planning.button}
			variant="contained"
			disabled={!season || opened.blocked !== undefined || !opened.basis}
			onClick={() => void planning.plan()}
		>
			Plan the season
		</Button>
	)
}

/** How far the planning is; on screen only while it runs. */
export function Progress({ playerId }: { playerId: string }) {
	const { value } = useHost('season.progress', { playerId }, { againAfterMs: () => askEveryMs })
	const { pass = 1, gap } = value?.running ? value : {}
	return (
		<Box>
			<LinearProgress aria-label="Planning" />
			<Typography role="status" sx={{ mt: 0.5 }}>
				Planning, step {pass} of {levels.length}
				{gap === undefined ? '' : `, within ${rounded(100 * gap, 1)} % of the best possible`}. You
				can go on working.
			</Typography>
		</Box>
	)
}
