/** One pair in the picture of the season: its wear, and its toe room where growth is forecast. */
import { dayWithoutYear } from '../../../shared/engine/plain/days.ts'
import type { PlanPair } from '../../../shared/engine/season/plan-file.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { hasRoomRight } from './laneWords.ts'
import { type DaysAcross, ink, pointsOf, rightEnd, size, wearAt } from './pictureScale.ts'
import { ToeRoom } from './ToeRoom.tsx'

const mostLetters = 21
const shortName = (name: string): string =>
	name.length > mostLetters ? `${name.slice(0, mostLetters - 1).trim()}...` : name
interface PairLaneProps {
	pair: PlanPair
	/** Where its lane begins. */
	top: number
	days: DaysAcross
	/** Share of its life from which a pair is checked, and the least toe room in mm. */
	checkShare: number
	leastMm: number
}
export function PairLane({ pair, top, days, checkShare, leastMm }: PairLaneProps) {
	return (
		<g>
			<text x={8} y={top + 16} fontSize="20" fontWeight="700" fill={ink.line}>
				{pair.letter}
			</text>
			<text x={30} y={top + 12} fontSize="11.5" fill={ink.line}>
				{shortName(pair.name)}
			</text>
			<text x={30} y={top + 28} fontSize="11" fill={ink.soft}>
				worn {rounded(100 * pair.wearFraction, 0)} % at the end
			</text>
			<WearScale top={top} checkShare={checkShare} />
			<Wear pair={pair} top={top} days={days} />
			<NextMark pair={pair} top={top} days={days} />
			<ToeRoom pair={pair} top={top} days={days} leastMm={leastMm} />
		</g>
	)
}

/** The replacement window as a strip, with the shares of a pair's life beside it. */
function WearScale({ top, checkShare }: Pick<PairLaneProps, 'top' | 'checkShare'>) {
	const whole = wearAt(top, 1)
	return (
		<>
			<rect
				x={size.left}
				y={whole}
				width={rightEnd - size.left}
				height={wearAt(top, checkShare) - whole}
				fill={ink.band}
			/>
			{[1, checkShare, 0].map((share) => (
				<text
					key={share}
					x={size.left - 4}
					y={wearAt(top, share) + 4}
					fontSize="10"
					textAnchor="end"
					fill={ink.soft}
				>
					{rounded(100 * share, 0)} %
				</text>
			))}
			<line
				x1={size.left}
				x2={rightEnd}
				y1={wearAt(top, 0)}
				y2={wearAt(top, 0)}
				stroke={ink.line}
				strokeWidth="0.8"
			/>
		</>
	)
}

type OfLane = Pick<PairLaneProps, 'pair' | 'top' | 'days'>
function Wear({ pair, top, days }: OfLane) {
	const points = pair.wear
		.filter(({ date }) => days.isInside(date))
		.map(({ date, wearFraction }) => ({ date, x: days.x(date), y: wearAt(top, wearFraction) }))
	return (
		<>
			{points.length > 0 && (
				<polyline
					points={pointsOf(points.map(({ x, y }) => [x, y]))}
					fill="none"
					stroke={ink.teal}
					strokeWidth="2.5"
				/>
			)}
			{points.map(({ date, x, y }) => (
				<circle key={date} cx={x} cy={y} r="2.6" fill={ink.teal} />
			))}
		</>
	)
}

/** When the pair is to be replaced this season, else when it is to be checked. */
function NextMark({ pair, top, days }: OfLane) {
	const { replaceBy, checkBy } = pair
	// one that is due already is marked where the season begins
	if (replaceBy !== undefined && replaceBy <= days.to)
		return (
			<Mark
				x={days.x(replaceBy)}
				top={top}
				words={`replace by ${dayWithoutYear(replaceBy)}`}
				after={hasRoomRight(days, replaceBy)}
			/>
		)
	if (checkBy === undefined || checkBy > days.to) return null
	return (
		<Mark
			x={days.x(checkBy)}
			top={top}
			words={`check by ${dayWithoutYear(checkBy)}`}
			after={hasRoomRight(days, checkBy)}
		/>
	)
}
interface MarkProps {
	x: number
	top: number
	words: string
	/** Whether the words stand after the line. */
	after: boolean
}
function Mark({ x, top, words, after }: MarkProps) {
	return (
		<g>
			<line
				x1={x}
				x2={x}
				y1={top - 10}
				y2={top + size.wear}
				stroke={ink.warn}
				strokeWidth="1.5"
				strokeDasharray="4 3"
			/>
			<text
				x={x + (after ? 4 : -4)}
				y={top}
				fontSize="11"
				fill={ink.warn}
				textAnchor={after ? 'start' : 'end'}
			>
				{words}
			</text>
		</g>
	)
}
