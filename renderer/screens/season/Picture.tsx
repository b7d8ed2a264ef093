/**
 * The season in one picture: each pair's wear to its replacement window, its toe room against the
 * growth forecast, and when to buy.
 */

import { Box, Paper, Typography } from '@mui/material'
import { dayWithoutYear, monthStarts } from '../../../shared/engine/plain/days.ts'
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { dayInWords } from '../../parts/dates.ts'
import { restsOn } from '../../parts/Workings.tsx'
import { leastKey, momentsOf } from './moments.ts'
import { PairBadge } from './PairBadge.tsx'
import { PairLane } from './PairLane.tsx'
import { type DaysAcross, daysAcross, ink, lanesOf, size } from './pictureScale.ts'

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
type Moments = ReturnType<typeof momentsOf>

interface PictureProps {
	plan: Plan
	/** Whether the player's feet still grow: the least toe room is another then. */
	young: boolean
}
export function Picture({ plan, young }: PictureProps) {
	const moments = momentsOf(plan)
	const growing = plan.pairs.filter((pair) => pair.toeRoom)
	const leastKeys = [...new Set(growing.map((pair) => leastKey(pair, young)))]
	return (
		<Paper component="section" variant="outlined" aria-labelledby="picture" sx={{ p: 2 }}>
			<Typography variant="h2" id="picture">
				The season in one picture
			</Typography>
			<Box component="figure" sx={{ m: 0, mt: 1 }}>
				<Box
					sx={{
						bgcolor: '#fff',
						border: 1,
						borderColor: 'divider',
						borderRadius: 1,
						overflowX: 'auto',
						'& svg': { display: 'block', width: '100%', minWidth: 560, height: 'auto' },
						'& text': { fontFamily: "'Noto Sans', sans-serif" },
					}}
				>
					<Drawing plan={plan} young={young} moments={moments} />
				</Box>
				<Caption plan={plan} />
			</Box>
			{moments.length > 0 && (
				<Box
					component="ul"
					aria-label="Dates of the season"
					sx={{ m: 0, mt: 1, pl: 2.5, fontSize: '0.9rem' }}
				>
					{moments.map(({ date, says }) => (
						<li key={`${date} ${says}`}>
							<strong>{dayInWords(date)}</strong>: {says}
						</li>
					))}
				</Box>
			)}
			<Typography variant="body2" color="text.secondary" sx={{ mt: 1 }}>
				{restsOn(protocol.basis('replacement window', 'season.checkShare'))}{' '}
				{leastKeys.map((key) => restsOn(protocol.basis('least toe room', key))).join(' ')}
			</Typography>
		</Paper>
	)
}

const inWords = (moments: Moments): string =>
	moments.length === 0
		? 'No pair reaches its replacement window or becomes too short this season.'
		: moments.map(({ date, says }) => `${dayInWords(date)}: ${says}`).join(' ')

function Drawing({ plan, young, moments }: PictureProps & { moments: Moments }) {
	const days = daysAcross(plan)
	const { lanes, buyTop, height } = lanesOf(plan)
	const begins = days.x(plan.from)
	return (
		<svg viewBox={`0 0 ${size.width} ${height}`} role="img" aria-label={inWords(moments)}>
			<Months days={days} height={height} />
			{lanes.map(({ pair, top }) => (
				<PairLane
					key={pair.id}
					pair={pair}
					top={top}
					days={days}
					checkShare={protocol.value('season.checkShare')}
					leastMm={protocol.value(leastKey(pair, young))}
				/>
			))}
			<line
				x1={begins}
				x2={begins}
				y1={size.top - 8}
				y2={height - 6}
				stroke={ink.line}
				strokeWidth="1.5"
			/>
			<Purchases purchases={plan.purchases} days={days} top={buyTop} />
		</svg>
	)
}

function Months({ days, height }: { days: DaysAcross; height: number }) {
	return monthStarts(days.from, days.to).map((day) => (
		<g key={day}>
			<line
				x1={days.x(day)}
				x2={days.x(day)}
				y1={size.top - 8}
				y2={height - 6}
				stroke={ink.rule}
				strokeWidth="0.6"
			/>
			<text x={days.x(day) + 3} y={14} fontSize="12" fill={ink.soft}>
				{months[Number(day.slice(5, 7)) - 1]}
			</text>
		</g>
	))
}

interface PurchasesProps {
	purchases: Plan['purchases']
	days: DaysAcross
	top: number
}
function Purchases({ purchases, days, top }: PurchasesProps) {
	if (purchases.length === 0) return null
	return (
		<>
			{purchases.map(({ says, buyBy, sole }, index) => {
				const x = days.x(buyBy)
				const y = top + index * size.purchase
				const after = x < size.width - 260
				return (
					<g key={says}>
						<path d={`M ${x} ${y - 6} l 6 6 l -6 6 l -6 -6 z`} fill={ink.warn} />
						<text
							x={x + (after ? 10 : -10)}
							y={y + 4}
							fontSize="12"
							textAnchor={after ? 'start' : 'end'}
							fill={ink.warn}
						>
							buy {termWords(sole)} by {dayWithoutYear(buyBy)}
						</text>
					</g>
				)
			})}
			<text x={8} y={top + 4} fontSize="12" fill={ink.line}>
				To buy
			</text>
		</>
	)
}

function Caption({ plan }: { plan: Plan }) {
	return (
		<Box component="figcaption" sx={{ mt: 1, fontSize: '0.88rem' }}>
			Line with dots: wear of each pair by month; the shaded strip is the replacement window. Dashed
			line: toe room at the usual rate of growth, with its range. Upright line: the plan begins
			here.
			{lanesOf(plan).lanes.map(({ pair }) => (
				<Box key={pair.id} component="span" sx={{ ml: 1.5, whiteSpace: 'nowrap' }}>
					<PairBadge letter={pair.letter} /> {pair.name}
				</Box>
			))}
		</Box>
	)
}
