/** The kind of a record that comes home: known here, of those that may come, and readable. */
import { readValue } from '../../../shared/desk/ledger/ledger.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { comesHome } from '../../../shared/desk/outreach/travels.ts'
import type { Arrival } from './arrival.ts'
import type { Trouble } from './check-record.ts'

/** Problems of a value that are told; the rest are like them. */
const mostProblems = 3

export function kindTrouble(
	_: Arrival,
	{ kind, version = 1, value }: Carried,
): Trouble | undefined {
	const reading = readValue(kind, version, value)
	if (reading.state === 'unknown-kind')
		return { outcome: 'waits', because: `is of a kind ("${kind}") that this version does not know` }
	if (!comesHome(kind))
		return {
			outcome: 'refused',
			because: 'is of a kind that never comes with a file of the way back',
		}
	if (reading.newer)
		return {
			outcome: 'waits',
			because: `was written in form ${version}, which this version does not know`,
		}
	if (reading.state === 'read') return undefined
	const told = reading.problems
		.slice(0, mostProblems)
		.map(({ path, message }) => `${path}: ${message}`)
	return { outcome: 'refused', because: `has entries that cannot stand (${told.join('; ')})` }
}
