/** The pairs of a visit as the numbers of the rotation. */
import { lifeShare } from '../../facts/life-share.ts'
import { type Finding, findingOf } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Sole } from '../../visit/terms.ts'
import type { Pair, Visit } from '../../visit/visit.ts'
import type { NamedPair } from '../../words/en/season/wearing.ts'
import { state } from '../../words/statement.ts'
import { ownRule } from '../finding.ts'
import type { EarlierPlan } from './earlier.ts'
import { type Judged, limitsOfPair } from './judged-pairs.ts'
import { lettersOf } from './letters.ts'
import type { Owned } from './problem.ts'

/** A pair that can be planned: its sole is recorded. */
type PlannedPair = Pair & { sole: Sole }
/** A pair as it was recorded, and its numbers. */
export interface OwnedPair {
	recorded: PlannedPair
	owned: Owned
}
interface OwnedPairs {
	pairs: OwnedPair[]
	letters: Map<string, string>
	/** pairs left out, and pairs whose wear is counted from 0 */
	findings: Finding[]
}
const isPlanned = (pair: Pair): pair is PlannedPair => pair.sole !== undefined

/** The life of a pair in minutes: as recorded, else the usual one times the share for body mass. */
const lifeOf = (pair: Pair, share: number, protocol: Protocol): number =>
	pair.lifeMinutes ?? protocol.value('season.lifeMinutes') * share
const pricePerMinute = (pair: Pair, lifeMinutes: number): number =>
	pair.price === undefined || lifeMinutes <= 0 ? 0 : pair.price / lifeMinutes
const portion = (percent: number | undefined): number | undefined =>
	percent === undefined ? undefined : percent / 100

function ownedOf(
	pair: PlannedPair,
	letter: string,
	{ lifeMinutes, dearest }: { lifeMinutes: number; dearest: number },
	protocol: Protocol,
	judged: Judged,
): Owned {
	const worn = pair.minutesWorn ?? 0
	// of a pair that nobody counted the minutes of it is known only where it was said
	const isCounted = pair.minutesWorn !== undefined || pair.brokenIn === false
	const isNew =
		pair.newFrom !== undefined || (isCounted && worn < protocol.value('season.matchFromMinutes'))
	return present({
		id: pair.id,
		name: pair.name ?? `pair ${letter}`,
		letter,
		sole: pair.sole,
		startMinutes: worn,
		lifeMinutes,
		dryingHours: {
			dry: pair.dryingHours ?? protocol.value('season.dryingDryHours'),
			damp: pair.dryingHours ?? protocol.value('season.dryingDampHours'),
			wet: pair.dryingHours ?? protocol.value('season.dryingWetHours'),
		},
		isNew,
		newFrom: pair.newFrom,
		shareMin: portion(pair.shareMinPercent),
		shareMax: portion(pair.shareMaxPercent),
		relativePrice: dearest > 0 ? pricePerMinute(pair, lifeMinutes) / dearest : 0,
		...limitsOfPair({ id: pair.id, isNew }, judged),
	})
}
/** How findings name a pair. */
const called = (pair: Pair, letters: ReadonlyMap<string, string>): NamedPair => ({
	letter: letters.get(pair.id) ?? '?',
	name: pair.name ?? pair.id,
})
const leftOut = (pair: Pair, letters: ReadonlyMap<string, string>): Finding =>
	findingOf(state('season.no-sole', called(pair, letters)), {
		id: `season.no-sole-${pair.id}`,
		side: 'none',
		level: 'caution',
		because: [],
		basis: ownRule('a pair without a sole class cannot be planned'),
	})
const minutesUnknown = (
	pair: Pair,
	letters: ReadonlyMap<string, string>,
	protocol: Protocol,
): Finding =>
	findingOf(state('season.minutes-unknown', called(pair, letters)), {
		id: `season.minutes-unknown-${pair.id}`,
		side: 'none',
		level: 'note',
		because: [],
		basis: protocol.basis('wear from recorded minutes', 'season.lifeMinutes'),
	})
/** The pairs of a visit that can be planned, by id, and what is said of the others. */
export function ownedPairs(
	visit: Visit,
	earlier: EarlierPlan | undefined,
	protocol: Protocol,
	judged: Judged = [],
): OwnedPairs {
	const all = [...(visit.footwear ?? [])].sort((left, right) => (left.id < right.id ? -1 : 1))
	const letters = lettersOf(all, earlier?.pairs)
	const planned = all.filter(isPlanned)
	const share = lifeShare(visit, protocol)
	const dearest = planned.reduce(
		(most, pair) => Math.max(most, pricePerMinute(pair, lifeOf(pair, share, protocol))),
		0,
	)
	return {
		pairs: planned.map((recorded) => ({
			recorded,
			owned: ownedOf(
				recorded,
				letters.get(recorded.id) ?? '?',
				{ lifeMinutes: lifeOf(recorded, share, protocol), dearest },
				protocol,
				judged,
			),
		})),
		letters,
		findings: [
			...all.filter((pair) => !isPlanned(pair)).map((pair) => leftOut(pair, letters)),
			...planned
				.filter((pair) => pair.minutesWorn === undefined)
				.map((pair) => minutesUnknown(pair, letters, protocol)),
		],
	}
}
