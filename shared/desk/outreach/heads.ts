/**
 * Where two places changed the same thing without knowing of each other: which versions stand at
 * the end of their lines, and what is to be asked.
 */
import { canonicalJson as canonical } from '../../engine/plain/canonical.ts'
import { type Carried, inOrder } from './carried.ts'

export type Version = Pick<Carried, 'id' | 'follows' | 'origin' | 'tick' | 'at' | 'value'>
/** Ids that an answer put to rest, besides what records follow. */
export type Joined = ReadonlySet<string>

/** Versions that no other follows and no answer has joined, in the common order. */
export function headsOf<V extends Version>(
	versions: readonly V[],
	joined: Joined = new Set(),
): V[] {
	const followed = new Set(versions.flatMap((version) => version.follows ?? []))
	const heads = versions.filter((version) => !followed.has(version.id) && !joined.has(version.id))
	return heads.sort(inOrder)
}
function lineOf(version: Version, byId: ReadonlyMap<string, Version>): string[] {
	const line: string[] = []
	for (
		let at: Version | undefined = version;
		at && !line.includes(at.id);
		at = at.follows === undefined ? undefined : byId.get(at.follows)
	)
		line.push(at.id)
	return line
}
/** The last version that all heads go back to; undefined where they share none. */
export function commonBase<V extends Version>(
	heads: readonly V[],
	versions: readonly V[],
): V | undefined {
	const byId = new Map(versions.map((version) => [version.id, version]))
	const lines = heads.map((head) => lineOf(head, byId))
	const shared = lines[0]?.find((id) => lines.every((line) => line.includes(id)))
	return shared === undefined ? undefined : byId.get(shared)
}
export interface FieldValue {
	record: string
	origin: string
	at: string
	value: unknown
}
export interface FieldQuestion {
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
export function joinFields(
	versions: readonly Version[],
	field: (value: unknown) => Record<string, unknown>,
	joined: Joined = new Set(),
): Joining {
	const heads = headsOf(versions, joined)
	const base = commonBase(heads, versions)
	const before = base ? field(base.value) : {}
	const value: Record<string, unknown> = {}
	const questions: FieldQuestion[] = []
	const keys = [
		...new Set([
			...Object.keys(before),
			...heads.flatMap((head) => Object.keys(field(head.value))),
		]),
	].sort()
	for (const key of keys) {
		const changed = heads.filter(
			(head) =>
				canonical(field(head.value)[key] ?? null) !== canonical(before[key] ?? null) ||
				base === undefined,
		)
		const distinct = new Map(
			changed.map((head) => [canonical(field(head.value)[key] ?? null), head]),
		)
		const standing = changed.at(-1)
		const now = standing ? field(standing.value)[key] : before[key]
		if (now !== undefined) value[key] = now
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
export interface ContestedConsent {
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
	const groups = new Map<string, ConsentVersion[]>()
	for (const version of versions) {
		const key = JSON.stringify([
			version.value.purpose,
			version.value.recipient.normalize('NFKC').trim().toLowerCase(),
		])
		groups.set(key, [...(groups.get(key) ?? []), version])
	}
	return [...groups.values()]
		.flatMap((group) => {
			// the last word of each place; words of one place follow each other by date as ever
			const last = new Map(headsOf(group, joined).map((head) => [head.origin, head]))
			const heads = [...last.values()].sort(inOrder)
			if (new Set(heads.map(decisionOf)).size < 2) return []
			const [strictest] = heads.toSorted(
				(a, b) => strictness[decisionOf(b)] - strictness[decisionOf(a)] || inOrder(a, b),
			)
			const first = group[0] as ConsentVersion
			return [
				{
					purpose: first.value.purpose,
					recipient: first.value.recipient,
					standing: strictest?.id ?? '',
					records: heads.map((head) => ({
						record: head.id,
						decision: decisionOf(head),
						origin: head.origin,
						at: head.at,
					})),
				},
			]
		})
		.sort((a, b) => (a.standing < b.standing ? -1 : 1))
}
/** Kinds whose versions follow each other and of which one counts. */
export const chained = ['clinic', 'settings', 'shelf', 'protocol', 'season', 'visit'] as const
export interface Fork {
	kind: string
	after: string
	records: { record: string; origin: string; at: string }[]
}
/** Versions of one kind that two places made of the same one. */
export function forksOf(
	records: readonly (Version & { kind: string })[],
	joined: Joined = new Set(),
): Fork[] {
	const followers = new Map<string, (Version & { kind: string })[]>()
	for (const record of records)
		if (record.follows !== undefined && (chained as readonly string[]).includes(record.kind))
			followers.set(`${record.kind} ${record.follows}`, [
				...(followers.get(`${record.kind} ${record.follows}`) ?? []),
				record,
			])
	return [...followers.values()]
		.flatMap((group) => {
			const open = group.filter((one) => !joined.has(one.id)).sort(inOrder)
			const [first] = open
			return first && open.length > 1 && new Set(open.map((one) => one.origin)).size > 1
				? [
						{
							kind: first.kind,
							after: first.follows ?? '',
							records: open.map((one) => ({ record: one.id, origin: one.origin, at: one.at })),
						},
					]
				: []
		})
		.sort((a, b) => (a.after < b.after ? -1 : 1))
}
