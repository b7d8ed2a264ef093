/**
 * The season in one picture: each pair's wear to its replacement window, its toe room against the
 * growth forecast, and when to buy.
 */
import { Box, Paper, Typography } from '@mui/material'
import type { ThresholdKey } from '../../../shared/engine/protocol/protocol.ts'
import type { Plan, PlanPair } from '../../../shared/engine/season/plan-file.ts'
import { dayNumber } from '../../../shared/engine/visit/age.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { dayInWords } from '../../parts/dates.ts'
import { restsOn } from '../../parts/Workings.tsx'
import { PairBadge } from './PairBadge.tsx'

const size = { left: 200, right: 20, width: 900, top: 26, wear: 66, room: 56, gap: 36 }
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
/** Ink on white paper in the dark too, as in the reports. */
const ink = {
	line: '#17292b',
	soft: '#46585a',
	rule: '#b9c0bd',
	band: '#f0d9b8',
	warn: '#8f4a00',
	teal: '#17524f',
	range: '#cfe3e0',
}
const roomTopMm = 24
const latest = (...dates: string[]): string => dates.sort().at(-1) ?? ''

function monthStarts(from: string, to: string): string[] {
	const starts: string[] = []
	const [year = 0, month = 0] = from.split('-').map(Number)
	for (let ahead = 0; ; ahead++) {
		const day = new Date(Date.UTC(year, month - 1 + ahead, 1)).toISOString().slice(0, 10)
		if (day > to) return starts
		if (day >= from) starts.push(day)
	}
}
/** Every date of the picture in words, for those who do not see it. */
export function momentsOf(plan: Plan): { date: string; says: string }[] {
	const of = (pair: PlanPair, date: string | undefined, says: string) =>
		date === undefined || date > plan.season.to
			? []
			: [{ date, says: `Pair ${pair.letter} (${pair.name}): ${says}.` }]
	return [
		...plan.pairs.flatMap((pair) => [
			...of(pair, pair.brokenInBy, 'broken in'),
			...of(pair, pair.checkBy, 'check studs, counter and sole: the replacement window begins'),
			...of(pair, pair.measureAgainBy, 'measure the feet again'),
			...of(pair, pair.outgrownBy, 'likely too short'),
			...of(pair, pair.replaceBy, 'replace'),
		]),
		...plan.purchases.map((purchase) => ({ date: purchase.buyBy, says: purchase.says })),
	].sort((a, b) => (a.date < b.date ? -1 : 1))
}
/** The same limits as the forecast's: by age, and by boot or trainer. */
function leastKey(pair: PlanPair, young: boolean): ThresholdKey {
	const trainer = pair.sole === 'road' || pair.sole === 'trail'
	return young
		? trainer
			? 'footwear.youthTrainerReplaceMm'
			: 'footwear.youthReplaceMm'
		: trainer
			? 'footwear.adultTrainerTightMm'
			: 'footwear.adultTightMm'
}
export function Picture({ plan, young }: { plan: Plan; young: boolean }) {
	const share = protocol.value('season.checkShare')
	const leastKeys = [
		...new Set(plan.pairs.filter((pair) => pair.toeRoom).map((pair) => leastKey(pair, young))),
	]
	const [first, last] = [
		dayNumber(plan.season.from),
		Math.max(dayNumber(plan.season.to), dayNumber(plan.season.from) + 1),
	]
	const x = (date: string) =>
		size.left +
		(size.width - size.left - size.right) *
			Math.min(1, Math.max(0, (dayNumber(date) - first) / (last - first)))
	const inside = <T extends { date: string }>(list: readonly T[]) =>
		list.filter((one) => one.date >= plan.season.from && one.date <= plan.season.to)
	const laneHeight = (pair: PlanPair) => size.wear + (pair.toeRoom ? size.room + 10 : 0) + size.gap
	let height = size.top
	const lanes = [...plan.pairs]
		.sort((a, b) => (a.letter < b.letter ? -1 : 1))
		.map((pair) => {
			const top = height
			height += laneHeight(pair)
			return { pair, top }
		})
	height += plan.purchases.length * 22 + 24
	const buyTop = height - plan.purchases.length * 22 - 10
	const moments = momentsOf(plan)
	const line = (points: readonly [number, number][]) =>
		points.map(([a, b]) => `${rounded(a, 1)},${rounded(b, 1)}`).join(' ')
	const mark = (date: string, y: number, words: string, after: boolean) => (
		<g key={`${date} ${words}`}>
			<line
				x1={x(date)}
				x2={x(date)}
				y1={y - 10}
				y2={y + size.wear}
				stroke={ink.warn}
				strokeWidth="1.5"
				strokeDasharray="4 3"
			/>
			<text
				x={x(date) + (after ? 4 : -4)}
				y={y}
				fontSize="11"
				fill={ink.warn}
				textAnchor={after ? 'start' : 'end'}
			>
				{words}
			</text>
		</g>
	)
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
					<svg
						viewBox={`0 0 ${size.width} ${height}`}
						role="img"
						aria-label={
							moments.length === 0
								? 'No pair reaches its replacement window or becomes too short this season.'
								: moments.map((moment) => `${dayInWords(moment.date)}: ${moment.says}`).join(' ')
						}
					>
						{monthStarts(plan.season.from, plan.season.to).map((day) => (
							<g key={day}>
								<line
									x1={x(day)}
									x2={x(day)}
									y1={size.top - 8}
									y2={height - 6}
									stroke={ink.rule}
									strokeWidth="0.6"
								/>
								<text x={x(day) + 3} y={14} fontSize="12" fill={ink.soft}>
									{months[Number(day.slice(5, 7)) - 1]}
								</text>
							</g>
						))}
						{lanes.map(({ pair, top }) => {
							const leastMm = protocol.value(leastKey(pair, young))
							const y = (fraction: number) =>
								top + size.wear - (size.wear * Math.min(1.1, fraction)) / 1.1
							const wear = inside(pair.wear)
							const roomTop = top + size.wear + 14
							const ry = (mm: number) =>
								roomTop +
								size.room -
								(size.room * Math.min(roomTopMm, Math.max(-4, mm) + 4)) / (roomTopMm + 4)
							const room = inside(pair.toeRoom ?? [])
							const right = (date: string) => x(date) < size.width - 150
							return (
								<g key={pair.id}>
									<text x={8} y={top + 16} fontSize="20" fontWeight="700" fill={ink.line}>
										{pair.letter}
									</text>
									<text x={30} y={top + 12} fontSize="11.5" fill={ink.line}>
										{pair.name.length > 21 ? `${pair.name.slice(0, 20).trim()}...` : pair.name}
									</text>
									<text x={30} y={top + 28} fontSize="11" fill={ink.soft}>
										worn {rounded(100 * pair.wearFraction, 0)} % at the end
									</text>
									<rect
										x={size.left}
										y={y(1)}
										width={size.width - size.left - size.right}
										height={y(share) - y(1)}
										fill={ink.band}
									/>
									<text
										x={size.left - 4}
										y={y(1) + 4}
										fontSize="10"
										textAnchor="end"
										fill={ink.soft}
									>
										100 %
									</text>
									<text
										x={size.left - 4}
										y={y(share) + 4}
										fontSize="10"
										textAnchor="end"
										fill={ink.soft}
									>
										{rounded(100 * share, 0)} %
									</text>
									<text
										x={size.left - 4}
										y={y(0) + 4}
										fontSize="10"
										textAnchor="end"
										fill={ink.soft}
									>
										0 %
									</text>
									<line
										x1={size.left}
										x2={size.width - size.right}
										y1={y(0)}
										y2={y(0)}
										stroke={ink.line}
										strokeWidth="0.8"
									/>
									{wear.length > 0 && (
										<polyline
											points={line(wear.map((one) => [x(one.date), y(one.wearFraction)]))}
											fill="none"
											stroke={ink.teal}
											strokeWidth="2.5"
										/>
									)}
									{wear.map((one) => (
										<circle
											key={one.date}
											cx={x(one.date)}
											cy={y(one.wearFraction)}
											r="2.6"
											fill={ink.teal}
										/>
									))}
									{pair.replaceBy !== undefined && pair.replaceBy <= plan.season.to
										? mark(
												latest(pair.replaceBy, plan.season.from),
												top,
												`replace by ${dayInWords(pair.replaceBy).replace(/ \d{4}$/, '')}`,
												right(pair.replaceBy),
											)
										: pair.checkBy !== undefined && pair.checkBy <= plan.season.to
											? mark(
													pair.checkBy,
													top,
													`check by ${dayInWords(pair.checkBy).replace(/ \d{4}$/, '')}`,
													right(pair.checkBy),
												)
											: null}
									{room.length > 0 && (
										<>
											<text x={30} y={roomTop + 14} fontSize="11" fill={ink.soft}>
												toe room, mm
											</text>
											<text
												x={size.left - 4}
												y={ry(leastMm) + 4}
												fontSize="10"
												textAnchor="end"
												fill={ink.warn}
											>
												least {leastMm}
											</text>
											<polygon
												points={line([
													...room.map((one): [number, number] => [x(one.date), ry(one.highMm)]),
													...[...room]
														.reverse()
														.map((one): [number, number] => [x(one.date), ry(one.lowMm)]),
												])}
												fill={ink.range}
											/>
											<polyline
												points={line(room.map((one) => [x(one.date), ry(one.toeRoomMm)]))}
												fill="none"
												stroke={ink.line}
												strokeWidth="2"
												strokeDasharray="7 3"
											/>
											<line
												x1={size.left}
												x2={size.width - size.right}
												y1={ry(leastMm)}
												y2={ry(leastMm)}
												stroke={ink.warn}
												strokeWidth="1.2"
												strokeDasharray="2 3"
											/>
											{room
												.filter((_, index) => index === 0 || index === room.length - 1)
												.map((one, index) => (
													<text
														key={one.date}
														x={x(one.date) + (index === 0 ? 3 : -3)}
														y={ry(one.toeRoomMm) - 5}
														fontSize="11"
														textAnchor={index === 0 ? 'start' : 'end'}
														fill={ink.line}
													>
														{rounded(one.toeRoomMm, 0)}
													</text>
												))}
											{pair.measureAgainBy !== undefined &&
												pair.measureAgainBy >= plan.season.from &&
												pair.measureAgainBy <= plan.season.to && (
													<g>
														<line
															x1={x(pair.measureAgainBy)}
															x2={x(pair.measureAgainBy)}
															y1={roomTop}
															y2={roomTop + size.room}
															stroke={ink.line}
															strokeWidth="1.2"
														/>
														<text
															x={x(pair.measureAgainBy) + (right(pair.measureAgainBy) ? 4 : -4)}
															y={roomTop + size.room + 9}
															fontSize="11"
															textAnchor={right(pair.measureAgainBy) ? 'start' : 'end'}
															fill={ink.line}
														>
															measure again by{' '}
															{dayInWords(pair.measureAgainBy).replace(/ \d{4}$/, '')}
														</text>
													</g>
												)}
										</>
									)}
								</g>
							)
						})}
						<line
							x1={x(plan.from)}
							x2={x(plan.from)}
							y1={size.top - 8}
							y2={height - 6}
							stroke={ink.line}
							strokeWidth="1.5"
						/>
						{plan.purchases.map((purchase, index) => {
							const y = buyTop + index * 22
							const right = x(purchase.buyBy) < size.width - 260
							return (
								<g key={purchase.says}>
									<path
										d={`M ${x(purchase.buyBy)} ${y - 6} l 6 6 l -6 6 l -6 -6 z`}
										fill={ink.warn}
									/>
									<text
										x={x(purchase.buyBy) + (right ? 10 : -10)}
										y={y + 4}
										fontSize="12"
										textAnchor={right ? 'start' : 'end'}
										fill={ink.warn}
									>
										buy {termWords(purchase.sole)} by{' '}
										{dayInWords(purchase.buyBy).replace(/ \d{4}$/, '')}
									</text>
								</g>
							)
						})}
						{plan.purchases.length > 0 && (
							<text x={8} y={buyTop + 4} fontSize="12" fill={ink.line}>
								To buy
							</text>
						)}
					</svg>
				</Box>
				<Box component="figcaption" sx={{ mt: 1, fontSize: '0.88rem' }}>
					Line with dots: wear of each pair by month; the shaded strip is the replacement window.
					Dashed line: toe room at the usual rate of growth, with its range. Upright line: the plan
					begins here.
					{[...plan.pairs]
						.sort((a, b) => (a.letter < b.letter ? -1 : 1))
						.map((pair) => (
							<Box key={pair.id} component="span" sx={{ ml: 1.5, whiteSpace: 'nowrap' }}>
								<PairBadge letter={pair.letter} /> {pair.name}
							</Box>
						))}
				</Box>
			</Box>
			{moments.length > 0 && (
				<Box
					component="ul"
					aria-label="Dates of the season"
					sx={{ m: 0, mt: 1, pl: 2.5, fontSize: '0.9rem' }}
				>
					{moments.map((moment) => (
						<li key={`${moment.date} ${moment.says}`}>
							<strong>{dayInWords(moment.date)}</strong>: {moment.says}
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
