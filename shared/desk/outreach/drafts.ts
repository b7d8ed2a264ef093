/**
 * Two drafts of one visit, worked at in two places, joined field by field: what only one of them
 * has or changed stands; what both changed otherwise is asked.
 */
import {
	build,
	clashing,
	isEmptyGroup,
	isGroup,
	type Leaves,
	leavesOf,
	saidPath,
} from './leaves.ts'
import {
	isSameStamp,
	knows,
	laterStamp,
	type Seen,
	type Stamp,
	type Stamped,
	type Stamps,
	sameValue,
	seenByBoth,
} from './stamps.ts'

type Side = 'first' | 'second'
/** An entry that both changed, and when and where each was typed, as far as the drafts tell. */
interface DraftConflict {
	path: string
	first?: Stamp | undefined
	second?: Stamp | undefined
}
interface JoinedDraft {
	content: Record<string, unknown>
	stamps: Stamps
	seen: Seen
	/** in the order of their paths */
	conflicts: DraftConflict[]
}
/** A path in both drafts, and in what both began from. */
interface Spot {
	was: unknown
	left: unknown
	right: unknown
	ofLeft: Stamp | undefined
	ofRight: Stamp | undefined
}
/** A field that one place measured and the other marked as not measured. */
function halfMeasured(whole: Record<string, unknown>): string[] {
	const visit = whole.visit
	if (!isGroup(visit) || !isGroup(visit.notMeasured)) return []
	return Object.keys(visit.notMeasured)
		.filter(
			(path) =>
				path
					.split('.')
					.reduce<unknown>((here, key) => (isGroup(here) ? here[key] : undefined), visit) !==
				undefined,
		)
		.map((path) => `visit.notMeasured.${path}`)
}
/** Whose value stands by the stamps: the one that was typed knowing of the other. */
function byStamps({ ofLeft, ofRight }: Spot, first: Stamped, second: Stamped): Side | undefined {
	if (!ofLeft || !ofRight || isSameStamp(ofLeft, ofRight)) return undefined
	const [firstKnows, secondKnows] = [knows(first, ofRight), knows(second, ofLeft)]
	if (firstKnows === secondKnows) return undefined
	return firstKnows ? 'first' : 'second'
}
/** Whose value stands where at most one of them changed what both began from. */
function byBase({ was, left, right }: Spot): Side | undefined {
	if (sameValue(left, was)) return 'second'
	return sameValue(right, was) ? 'first' : undefined
}
/** Where what both began from is not known: what one of them never had is no change of it. */
function byAbsence({ left, right, ofLeft, ofRight }: Spot): Side | undefined {
	if (left === undefined && !ofLeft) return 'second'
	return right === undefined && !ofRight ? 'first' : undefined
}
interface Joining {
	base: unknown
	first: Stamped
	second: Stamped
	choose: (path: string) => Side | undefined
}
/** @returns whose value stands; undefined where a person must say */
function sideThatStands(path: string, spot: Spot, joining: Joining): Side | undefined {
	const { base, first, second, choose } = joining
	return (
		choose(saidPath(path)) ??
		byStamps(spot, first, second) ??
		(base === undefined ? byAbsence(spot) : byBase(spot))
	)
}
/** Which value is put where nobody said: the later, so that the order of joining does not matter. */
function putMeanwhile({ ofLeft, ofRight }: Spot): Side {
	return ofRight && laterStamp(ofLeft, ofRight) === ofRight ? 'second' : 'first'
}
/** A content as leaves and their stamps. */
interface Entries {
	leaves: Leaves
	stamps: Stamps
}
/** What is a value in one content and a group in another is one value in each. */
function entriesOf(base: unknown, first: Stamped, second: Stamped): Entries[] {
	const sides: Stamped[] = [{ content: base }, first, second]
	const whole = clashing(...sides.map(({ content }) => leavesOf(content)))
	return sides.map(({ content, stamps = {} }) => ({ leaves: leavesOf(content, whole), stamps }))
}
/** The stamp of an entry; of a group that is one value the latest in it. */
function stampAt({ leaves, stamps }: Entries, path: string): Stamp | undefined {
	const [said, value] = [saidPath(path), leaves.get(path)]
	if (!isGroup(value) || isEmptyGroup(value)) return stamps[said]
	return Object.entries(stamps)
		.filter(([inner]) => inner.startsWith(`${said}.`))
		.reduce<Stamp | undefined>((latest, [, stamp]) => laterStamp(latest, stamp), undefined)
}
interface JoinedSpot {
	value: unknown
	stamp: Stamp | undefined
	isAsked: boolean
}
function joinSpot(path: string, spot: Spot, joining: Joining): JoinedSpot {
	const { left, right, ofLeft, ofRight } = spot
	if (sameValue(left, right))
		return { value: left, stamp: laterStamp(ofLeft, ofRight), isAsked: false }
	const said = sideThatStands(path, spot, joining)
	const isAsked = said === undefined
	return (said ?? putMeanwhile(spot)) === 'second'
		? { value: right, stamp: ofRight, isAsked }
		: { value: left, stamp: ofLeft, isAsked }
}
/** The stamps of both, the later of two: what was taken out on both sides keeps its own too. */
function stampsOfBoth(first: Stamps, second: Stamps): Map<string, Stamp> {
	const both = new Map(Object.entries(first))
	for (const [path, stamp] of Object.entries(second))
		both.set(path, laterStamp(both.get(path), stamp) ?? stamp)
	return both
}
/**
 * Joins two drafts of one visit.
 * @param base the content both began from; undefined where it is not known
 * @param choose for a path where they differ: which one stands, by a person's word. Where both
 * changed it and nobody says, it is a conflict, and until it is settled the later one is put, or the
 * first where that cannot be told
 */
export function joinStampedDrafts(
	base: unknown,
	first: Stamped,
	second: Stamped,
	choose: (path: string) => Side | undefined = () => undefined,
): JoinedDraft {
	const [of = none, ofFirst = none, ofSecond = none] = entriesOf(base, first, second)
	const leaves: Leaves = new Map()
	const stamps = stampsOfBoth(ofFirst.stamps, ofSecond.stamps)
	const conflicts = new Map<string, DraftConflict>()
	for (const path of new Set([...ofFirst.leaves.keys(), ...ofSecond.leaves.keys()])) {
		const spot: Spot = {
			was: of.leaves.get(path),
			left: ofFirst.leaves.get(path),
			right: ofSecond.leaves.get(path),
			ofLeft: stampAt(ofFirst, path),
			ofRight: stampAt(ofSecond, path),
		}
		const { value, stamp, isAsked } = joinSpot(path, spot, { base, first, second, choose })
		const said = saidPath(path)
		if (isAsked) conflicts.set(said, { path: said, first: spot.ofLeft, second: spot.ofRight })
		if (value !== undefined) leaves.set(path, value)
		if (stamp) stamps.set(said, stamp)
		else stamps.delete(said)
	}
	const content = build(leaves)
	for (const path of halfMeasured(content)) if (!conflicts.has(path)) conflicts.set(path, { path })
	return {
		content,
		stamps: Object.fromEntries(stamps),
		seen: seenByBoth(first, second),
		conflicts: [...conflicts.values()].sort((one, other) => (one.path < other.path ? -1 : 1)),
	}
}
const none: Entries = { leaves: new Map(), stamps: {} }
/** The same of two contents of which no more is known. @internal */
export function joinDraftContents(
	base: unknown,
	first: unknown,
	second: unknown,
	choose: (path: string) => Side | undefined = () => undefined,
): { value: Record<string, unknown>; conflicts: string[] } {
	const { content, conflicts } = joinStampedDrafts(
		base,
		{ content: first },
		{ content: second },
		choose,
	)
	return { value: content, conflicts: conflicts.map(({ path }) => path) }
}
