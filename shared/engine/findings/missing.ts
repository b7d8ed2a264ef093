/** What a complete visit would still add, in the order of the walk. */
import { isMinor } from '../facts/age.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { limbsTested } from '../visit/load-tests.ts'
import { catalogue, sidesOf } from '../visit/measures/catalogue.ts'
import type { Measure } from '../visit/measures/measure.ts'
import { pathOn, recordedAt } from '../visit/measures/value.ts'
import type { Visit } from '../visit/visit.ts'
import { conditionInWords } from '../words/words.ts'
import type { PerSide } from './compared.ts'

type Missing = { path: string; says: string }

/** What is asked and is no measure. */
const played: readonly Missing[] = [
	{ path: 'play.code', says: 'code played' },
	{ path: 'play.surfaces', says: 'surfaces played on' },
]
const asked: readonly Missing[] = [
	{ path: 'screening', says: 'the warning-sign questions' },
	{ path: 'footwear', says: 'the pairs the player owns' },
]
/** A condition that was entered and of which nobody said how it stands. */
const unsaid = ({ conditions = [] }: Visit): Missing[] =>
	conditions.flatMap((entered, index) =>
		entered.status === undefined
			? [
					{
						path: `conditions.${index}.status`,
						says: `the status of ${conditionInWords(entered, 'clinician')}`,
					},
				]
			: [],
	)
function isRecorded(visit: Visit, path: string): boolean {
	const value = recordedAt(visit, path)
	if (value !== null && typeof value === 'object') return Object.keys(value).length > 0
	return value !== undefined
}
/** The measures that a visit is told to lack where they were not taken, a side each. */
function wantedOf(wants: (wanted: Measure['wanted']) => boolean, sided: boolean): Missing[] {
	return catalogue
		.filter((placed) => placed.sided === sided && wants(placed.measure.wanted))
		.flatMap((placed) =>
			sidesOf(placed).map((side) => ({
				path: pathOn(placed, side),
				says: side === undefined ? placed.measure.name : `${placed.measure.name}, ${side}`,
			})),
		)
}
/**
 * Paths not yet measured, without those the clinician marked as not measured.
 * @param testsWait why tests under load wait on each limb: those are not asked for
 */
export function missingMeasures(
	visit: Visit,
	protocol: Protocol,
	testsWait: PerSide<readonly string[]> = { left: [], right: [] },
): Missing[] {
	const minor = isMinor(visit, protocol)
	const wants = (wanted: Measure['wanted']) =>
		wanted === 'everyone' || (minor && wanted === 'minors')
	const waits = (path: string) =>
		limbsTested(path, visit).some((side) => testsWait[side].length > 0)
	return [
		...wantedOf(wants, true),
		...played,
		...unsaid(visit),
		...wantedOf(wants, false),
		...asked,
	]
		.filter(({ path }) => !isRecorded(visit, path) && !(path in (visit.notMeasured ?? {})))
		.filter(({ path }) => !waits(path))
		.map(({ path, says }) => ({ path, says }))
}
