/** The toe room of a pair over the season, with its range, the least, and when to measure again. */
import { dayWithoutYear } from '../../../shared/engine/plain/days.ts'
import type { PlanPair } from '../../../shared/engine/season/plan-file.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { hasRoomRight } from './laneWords.ts'
import {
	type DaysAcross,
	ink,
	pointsOf,
	rightEnd,
	roomAt,
	roomTopOf,
	size,
} from './pictureScale.ts'

interface ToeRoomProps {
	pair: PlanPair
	/** Where the lane of the pair begins. */
	top: number
	days: DaysAcross
	/** The least toe room in mm. */
	leastMm: number
}
export function ToeRoom({ pair, top, days, leastMm }: ToeRoomProps) {
	const rooms = (pair.toeRoom ?? []).filter(({ date }) => days.isInside(date))
	if (rooms.length === 0) return null
	const roomTop = roomTopOf(top)
	const y = (mm: number) => roomAt(roomTop, mm)
	const at = (date: string, mm: number) => [days.x(date), y(mm)] as const
	const upper = rooms.map(({ date, highMm }) => at(date, highMm))
	const lower = rooms.map(({ date, lowMm }) => at(date, lowMm))
	return (
		<>
			<text x={30} y={roomTop + 14} fontSize="11" fill={ink.soft}>
				toe room, mm
			</text>
			<text x={size.left - 4} y={y(leastMm) + 4} fontSize="10" textAnchor="end" fill={ink.warn}>
				least {leastMm}
			</text>
			<polygon points={pointsOf([...upper, ...lower.toReversed()])} fill={ink.range} />
			<polyline
				points={pointsOf(rooms.map(({ date, toeRoomMm }) => at(date, toeRoomMm)))}
				fill="none"
				stroke={ink.line}
				strokeWidth="2"
				strokeDasharray="7 3"
			/>
			<line
				x1={size.left}
				x2={rightEnd}
				y1={y(leastMm)}
				y2={y(leastMm)}
				stroke={ink.warn}
				strokeWidth="1.2"
				strokeDasharray="2 3"
			/>
			{rooms
				.filter((_, index) => index === 0 || index === rooms.length - 1)
				.map(({ date, toeRoomMm }, index) => (
					<text
						key={date}
						x={days.x(date) + (index === 0 ? 3 : -3)}
						y={y(toeRoomMm) - 5}
						fontSize="11"
						textAnchor={index === 0 ? 'start' : 'end'}
						fill={ink.line}
					>
						{rounded(toeRoomMm, 0)}
					</text>
				))}
			<MeasureAgain by={pair.measureAgainBy} roomTop={roomTop} days={days} />
		</>
	)
}

interface MeasureAgainProps {
	by: string | undefined
	roomTop: number
	days: DaysAcross
}
function MeasureAgain({ by, roomTop, days }: MeasureAgainProps) {
	if (by === undefined || !days.isInside(by)) return null
	const x = days.x(by)
	const after = hasRoomRight(days, by)
	return (
		<g>
			<line
				x1={x}
				x2={x}
				y1={roomTop}
				y2={roomTop + size.room}
				stroke={ink.line}
				strokeWidth="1.2"
			/>
			<text
				x={x + (after ? 4 : -4)}
				y={roomTop + size.room + 9}
				fontSize="11"
				textAnchor={after ? 'start' : 'end'}
				fill={ink.line}
			>
				measure again by {dayWithoutYear(by)}
			</text>
		</g>
	)
}
