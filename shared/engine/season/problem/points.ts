/** How well a pair suits a session, or why it may not be worn there; what the last levels weigh. */
import type { Suitability } from '../../protocol/norms/suitability.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Pair } from '../../visit/visit.ts'
import type { Barred } from '../../words/en/season/wearing.ts'
import { barredBy } from './code-rules.ts'
import { barredByLimits } from './judged-pairs.ts'
import type { OwnedPair } from './pairs.ts'
import type { Slot, Weights } from './problem.ts'

const isAway = (pair: Pair, date: string): boolean =>
	pair.unavailable?.some((away) => date >= away.from && date <= away.to) ?? false
const isYetToCome = (pair: Pair, date: string): boolean =>
	(pair.newFrom !== undefined && date < pair.newFrom) ||
	(pair.acquired !== undefined && date < pair.acquired)

/** Points an hour of a pair in a session, or why it may not be worn there. */
export function pointsOf(
	{ recorded, owned }: OwnedPair,
	slot: Slot,
	{
		suitability,
		protocol,
		replaced,
	}: {
		suitability: Suitability
		protocol: Protocol
		/** ids of pairs that are to be replaced */
		replaced?: readonly string[]
	},
): number | Barred {
	const limited = barredByLimits(owned, slot)
	if (limited !== undefined) return limited
	if (isYetToCome(recorded, slot.date)) return { why: 'not-bought' }
	if (isAway(recorded, slot.date)) return { why: 'not-at-hand' }
	const barred = barredBy(recorded, slot.code, protocol)
	if (barred !== undefined) return barred
	const fit = suitability[owned.sole][slot.surface][slot.ground]
	if (fit === 'forbidden') return { why: 'sole', sole: owned.sole, surface: slot.surface }
	// last, so that whoever reads it knows that nothing else keeps it out
	if (owned.startMinutes >= owned.lifeMinutes) return { why: 'worn-out' }
	return fit + (replaced?.includes(recorded.id) ? protocol.value('season.outgrownPoints') : 0)
}
/** What counts against what inside the last levels. */
export const weightsOf = ({ value }: Protocol): Weights => ({
	change: value('season.changePoints'),
	wear: value('season.wearPoints'),
	share: value('season.sharePoints'),
	switchOver: value('season.switchPoints'),
	switchHours: value('season.switchHours'),
	price: value('season.pricePoints'),
	gap: value('season.gapPoints'),
	familiarDays: value('season.familiarDays'),
})
