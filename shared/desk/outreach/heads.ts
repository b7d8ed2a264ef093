/**
 * Where two places changed the same thing without knowing of each other: which versions stand at
 * the end of their lines, and what is to be asked.
 */
import { canonicalJson as canonical } from '../../engine/plain/canonical.ts'
import { kindsWhere } from '../ledger/ledger.ts'
import { type Carried, inOrder } from './carried.ts'

export type Version = Pick<Carried, 'id' | 'follows' | 'origin' | 'tick' | 'at' | 'value'>
/** Ids that an answer put to rest, besides what records follow. */
type Joined = ReadonlySet<string>

/** Versions that no other follows and no answer has joined, in the common order. */
export function headsOf<V extends Version>(
	versions: readonly V[],
	joined: Joined = new Set(),
): V[] {
	const followed = new Set(versions.flatMap((version) => version.follows ?? []))
	const heads = versions.filter((version) => !followed.has(version.id) && !joined.has(version.id))
	return heads.sort(inOrder)
}
/** A version, the one it follows, and so on back as far as they are known. */
function lineOf(version: Version, byId: ReadonlyMap<string, Version>): string[] {
	const line: string[] = []
	let standing: Version | undefined = version
	while (standing && !line.includes(standing.id)) {
		line.push(standing.id)
		standing = standing.follows === undefined ? undefined : byId.get(standing.follows)
	}
	return line
}
/** The last version that all heads go back to; undefined where they share none. */
function commonBase<V extends Version>(heads: readonly V[], versions: readonly V[]): V | undefined {
	const byId = new Map(versions.map((version) => [version.id, version]))
	const lines = heads.map((head) => lineOf(head, byId))
	const shared = lines[0]?.find((id) => lines.every((line) => line.includes(id)))
	return shared === undefined ? undefined : byId.get(shared)
}
interface FieldValue {
	record: string
	origin: string
	at: string
	value: unknown
}
interface FieldQuestion {
	field: string
	values: FieldValue[]
}
export interface Joining {
	value: Record<string, unknown>
	questions: FieldQuestion[]
	heads: string[]
}
/**
 * Field by field: what only one place changed is taken; what two changed differently is asked, and
 * until then the later in the common order is shown.
 * @param field picks the object whose fields count out of a record's value
 */
export function joinFields<V extends Version>(
	versions: readonly V[],
	field: (value: V['value']) => Record<string, unknown>,
	joined: Joined = new Set(),
): Joining {
	const heads = headsOf(versions, joined)
	const base = commonBase(heads, versions)
	const before = base ? field(base.value) : {}
	const keys = new Set([
		...Object.keys(before),
		...heads.flatMap((head) => Object.keys(field(head.value))),
	])
	const value: Record<string, unknown> = {}
	const questions: FieldQuestion[] = []
	for (const key of [...keys].sort()) {
		const tells = (version: V): string => canonical(field(version.value)[key] ?? null)
		const changed = heads.filter(
			(head) => base === undefined || tells(head) !== canonical(before[key] ?? null),
		)
		const standing = changed.at(-1)
		const now = standing ? field(standing.value)[key] : before[key]
		if (now !== undefined) value[key] = now
		const distinct = new Map(changed.map((head) => [tells(head), head]))
		if (distinct.size > 1)
			questions.push({
				field: key,
				values: [...distinct.values()].sort(inOrder).map((head) => ({
					record: head.id,
					origin: head.origin,
					at: head.at,
					value: field(head.value)[key] ?? null,
				})),
			})
	}
	return { value, questions, heads: heads.map((head) => head.id) }
}
export interface ConsentVersion extends Version {
	value: {
		consentId: string
		purpose: string
		recipient: string
		decision: 'permit' | 'deny'
		withdrawn?: string | undefined
	}
}
interface ContestedConsent {
	purpose: string
	recipient: string
	standing: string
	records: {
		record: string
		decision: 'permit' | 'deny' | 'withdrawn'
		origin: string
		at: string
	}[]
}
const decisionOf = ({ value }: ConsentVersion): 'permit' | 'deny' | 'withdrawn' =>
	value.withdrawn !== undefined ? 'withdrawn' : value.decision
const strictness = { permit: 0, deny: 1, withdrawn: 2 } as const
/**
 * Consents to one purpose for one recipient that two places recorded apart and differently. The
 * stricter stands until a person decides.
 */
export function contestedConsents(
	versions: readonly ConsentVersion[],
	joined: Joined = new Set(),
): ContestedConsent[] {
	const groups = Map.groupBy(versions, ({ value }) =>
		JSON.stringify([value.purpose, value.recipient.normalize('NFKC').trim().toLowerCase()]),
	)
	return [...groups.values()]
		.flatMap((group) => contested(group, joined))
		.sort((first, second) => (first.standing < second.standing ? -1 : 1))
}
/** @param group consents to one purpose for one recipient */
function contested(group: readonly ConsentVersion[], joined: Joined): ContestedConsent[] {
	// the last word of each place; words of one place follow each other by date as ever
	const last = new Map(headsOf(group, joined).map((head) => [head.origin, head]))
	const heads = [...last.values()].sort(inOrder)
	if (new Set(heads.map(decisionOf)).size < 2) return []
	const [strictest] = heads.toSorted(
		(first, second) =>
			strictness[decisionOf(second)] - strictness[decisionOf(first)] || inOrder(first, second),
	)
	const { purpose = '', recipient = '' } = group[0]?.value ?? {}
	return [
		{
			purpose,
			recipient,
			standing: strictest?.id ?? '',
			records: heads.map((head) => ({
				record: head.id,
				decision: decisionOf(head),
				origin: head.origin,
				at: head.at,
			})),
		},
	]
}
/** Kinds whose versions follow each other and of which one counts. */
const chained: readonly string[] = kindsWhere((kind) => kind.chained)
export interface Fork {
	kind: string
	after: string
	records: { record: string; origin: string; at: string }[]
}
type OfKind = Version & { kind: string }
/** Versions of one kind that two places made of the same one. */
export function forksOf(records: readonly OfKind[], joined: Joined = new Set()): Fork[] {
	const following = records.filter(
		({ kind, follows }) => follows !== undefined && chained.includes(kind),
	)
	const groups = Map.groupBy(following, ({ kind, follows }) => `${kind} ${follows}`)
	return [...groups.values()]
		.flatMap((group) => forked(group, joined))
		.sort((first, second) => (first.after < second.after ? -1 : 1))
}
/** @param group the versions that follow one version */
function forked(group: readonly OfKind[], joined: Joined): Fork[] {
	const open = group.filter(({ id }) => !joined.has(id)).sort(inOrder)
	const [first] = open
	const places = new Set(open.map(({ origin }) => origin))
	if (!first || places.size < 2) return []
	return [
		{
			kind: first.kind,
			after: first.follows ?? '',
			records: open.map(({ id, origin, at }) => ({ record: id, origin, at })),
		},
	]
}
