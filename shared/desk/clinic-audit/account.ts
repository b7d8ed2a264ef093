/**
 * Forecasts held to account: how many fell inside the band, whether it was wrong too often, and what
 * error the clinic's own forecasts had. Described of the past; it promises nothing. Pure.
 */
import { atMost, exactInterval } from '../../engine/plain/binomial.ts'
import { quantile, type Spread, spreadOf } from '../../engine/plain/middle.ts'
import { limitsOf } from '../../engine/protocol/check.ts'
import type { Protocol } from '../../engine/protocol/protocol.ts'
import type { ForecastKind } from './forecasts.ts'
import { type Cell, type Counted, hidden } from './tally.ts'

const hundred = 100
/** How a kind of forecast did. Nothing of it is told while what came is too few to show. */
export interface Held {
	kind: ForecastKind
	came: Cell
	/** share inside, with the exact interval, %; absent where a cell of it is hidden */
	inside?: { percent: number; lowPercent: number; highPercent: number }
	/** as good a band would have so few inside by so rare a chance that it is wrong too often */
	isWrongTooOften: boolean
}
const percentOf = (share: number): number => Math.round(share * hundred * 10) / 10
export function heldOf(
	kind: ForecastKind,
	counted: Counted,
	shown: Readonly<Record<string, Cell>>,
	protocol: Protocol,
): Held {
	const of = (cell: string): number => counted.cells.get(cell) ?? 0
	const [came, inside] = [of('came'), of('inside')]
	const isTold = shown.came !== hidden && came > 0
	const claimed = protocol.value('audit.bandPercent') / hundred
	const chance = protocol.value('audit.chancePercent') / hundred
	const sure = protocol.value('audit.surePercent') / hundred
	const interval = exactInterval(inside, Math.max(came, 1), sure)
	const isShare = isTold && shown.inside !== hidden && shown.outside !== hidden
	return {
		kind,
		came: shown.came ?? 0,
		...(isShare && {
			inside: {
				percent: percentOf(inside / came),
				lowPercent: percentOf(interval.low),
				highPercent: percentOf(interval.high),
			},
		}),
		isWrongTooOften: isTold && atMost(inside, came, claimed) < chance,
	}
}
/** The rows of the protocol that hold the band of the foot forecast. */
export const errorKeys = ['growth.footLowFactor', 'growth.footHighFactor'] as const
/** What the clinic's own forecasts of the foot say of the band. */
export interface OwnError {
	/** how many there are; absent while they are too few to show */
	forecasts?: number
	/** so many are needed before it can be taken */
	least: number
	/** the shares of the mean rate between which the claimed share of the feet grew */
	band?: { low: number; high: number }
	/** what grew, as a share of what was forecast */
	ratio?: Spread
}
/** The most that a row of this unit may be set to. */
const [, mostFactor] = limitsOf('growth.footHighFactor')
const factor = (value: number): number => Math.round(value * hundred) / hundred
/**
 * The band holds the claimed share of the ratios, as many beyond it on either side; it always holds the
 * mean rate itself, and never shrinks a foot.
 */
export function ownErrorOf(
	counted: Counted | undefined,
	shown: Readonly<Record<string, Cell>>,
	protocol: Protocol,
): OwnError {
	const least = protocol.value('audit.leastForecasts')
	const ratios = counted?.values.get('ratio') ?? []
	const ratio = spreadOf(ratios)
	if (!ratio || shown.came === hidden) return { least }
	if (ratios.length < least) return { least, forecasts: ratios.length, ratio }
	const beyond = (1 - protocol.value('audit.bandPercent') / hundred) / 2
	const low = quantile(ratios, beyond) ?? 1
	const high = quantile(ratios, 1 - beyond) ?? 1
	return {
		least,
		forecasts: ratios.length,
		ratio,
		band: {
			low: factor(Math.min(1, Math.max(0, low))),
			high: factor(Math.min(mostFactor, Math.max(1, high))),
		},
	}
}
/** A third of the forecasts, by how much growth they expected. */
export interface Third {
	expected: Spread
	grown: Spread
}
/** Forecast growth beside what came, by thirds of the forecast; none while a third is too few to show. */
export function thirdsOf(counted: Counted, least: number): Third[] {
	const expected = counted.values.get('expected') ?? []
	const grown = counted.values.get('grown') ?? []
	const pairs = expected
		.map((each, at) => [each, grown[at] ?? 0] as const)
		.toSorted(([one, a], [other, b]) => one - other || a - b)
	const size = Math.floor(pairs.length / 3)
	if (size < least) return []
	const ends = [0, size, pairs.length - size, pairs.length] as const
	return [0, 1, 2].flatMap((third) => {
		const part = pairs.slice(ends[third], ends[third + 1])
		const [before, after] = [
			spreadOf(part.map(([one]) => one)),
			spreadOf(part.map(([, one]) => one)),
		]
		return before && after ? [{ expected: before, grown: after }] : []
	})
}
