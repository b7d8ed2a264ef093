/**
 * The season as one picture: weeks down, days across. Arrow keys move, Enter opens, a pair's letter
 * pins it, Delete takes the pin off. <strong>!</strong> means that a wish is not met.
 */
import { Box, Typography } from '@mui/material'
import type { RefObject } from 'react'
import { capital } from '../../../shared/engine/words/words.ts'
import { dayInWords } from '../../parts/dates.ts'
import { DayCell } from './DayCell.tsx'
import { weekdays } from './edits.ts'
import { type Pairs, shortDay } from './gridWords.ts'
import type { GridWalk } from './useGridWalk.ts'
import type { Week } from './weekGrid.ts'

const look = {
	borderCollapse: 'separate',
	borderSpacing: 0,
	width: '100%',
	minWidth: '44rem',
	tableLayout: 'fixed',
	fontVariantNumeric: 'tabular-nums',
	'& th, & td': { p: 0, borderBottom: 1, borderRight: 1, borderColor: 'divider' },
	'& thead th': {
		position: 'sticky',
		top: 0,
		zIndex: 1,
		bgcolor: 'background.paper',
		textAlign: 'left',
		px: 0.75,
		py: 0.5,
		borderBottom: 2,
	},
	'& tbody th': { px: 0.75, fontWeight: 600, fontSize: '0.85rem', textAlign: 'left' },
} as const

interface WeekGridProps {
	weeks: readonly Week[]
	pairs: Pairs
	walk: GridWalk['walk']
	body: RefObject<HTMLTableSectionElement | null>
}
export function WeekGrid({ weeks, pairs, walk, body }: WeekGridProps) {
	return (
		<Box component="section" aria-labelledby="weeks">
			<Typography variant="h2" id="weeks">
				The season
			</Typography>
			<Typography color="text.secondary" variant="body2" id="weeks-keys" sx={{ mb: 1 }}>
				Arrow keys move, Enter opens a day. A pair's letter, or its mark dragged here, pins it;
				Delete takes the pin off. <strong>!</strong> means that a wish is not met.
			</Typography>
			<Box
				sx={{
					maxHeight: 'max(26rem, calc(100vh - 12rem))',
					overflow: 'auto',
					border: 1,
					borderColor: 'divider',
					borderRadius: 1,
					bgcolor: 'background.paper',
				}}
			>
				<Box
					component="table"
					role="grid"
					aria-labelledby="weeks"
					aria-describedby="weeks-keys"
					sx={look}
				>
					<thead>
						<tr>
							<Box component="th" scope="col" sx={{ width: '5.2rem' }}>
								Week of
							</Box>
							{weekdays.map((weekday) => (
								<th key={weekday} scope="col" aria-label={capital(weekday)}>
									{capital(weekday).slice(0, 3)}
								</th>
							))}
						</tr>
					</thead>
					<tbody ref={body} onKeyDown={walk.press}>
						{weeks.map(({ monday, days }, week) => (
							<tr key={monday}>
								<th scope="row" aria-label={`Week of ${dayInWords(monday)}`}>
									{shortDay(monday)}
								</th>
								{days.map((of, day) => (
									<DayCell key={of.date} week={week} day={day} of={of} pairs={pairs} walk={walk} />
								))}
							</tr>
						))}
					</tbody>
				</Box>
			</Box>
		</Box>
	)
}
