/** Where a record that comes home stands: its name, its place in the order, its time, its length. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { isRecordId } from '../../store/record.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'

/** Longest record that is taken in, in bytes of its JSON; a report of many pages has a tenth of it. */
const longestRecord = 4 * 2 ** 20
/** How far ahead of the records here a laptop may have counted: more than anybody writes on it. */
const furthestAhead = 10_000_000
const refused = (because: string): Trouble => ({ outcome: 'refused', because })

/** Looked at before anything else: what else is done with a record takes time by its length. */
export function placeTrouble(
	{ lastTick, today, days }: Arrival,
	{ id, value, card, tick, at }: Carried,
): Trouble | undefined {
	if (!isRecordId(id)) return refused('bears a name that no record has')
	const bytes = Buffer.byteLength(JSON.stringify([value, card]))
	if (bytes > longestRecord)
		return refused(`has ${bytes} bytes, more than a record may have (${longestRecord})`)
	// what is written here afterwards stands behind it: the count must not run out
	if (tick > lastTick + furthestAhead)
		return refused(`stands at place ${tick} of the order, and the records here at ${lastTick}`)
	const [, latest = today] = [today, days.last].sort()
	const on = dayHere(new Date(at))
	return on > addDays(latest, 1)
		? refused(`was written on ${on}, which is not yet come`)
		: undefined
}
