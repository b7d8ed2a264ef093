/**
 * Merging by union: nothing is overwritten, and the order of merging does not matter. Used by the
 * host record by record, and whole by the tests.
 */
import { digestOf } from '../../engine/plain/canonical.ts'
import { type Carried, type CarriedDraft, type DraftBase, inOrder } from './carried.ts'
import {
	type ConsentVersion,
	contestedConsents,
	forksOf,
	type Joining,
	joinFields,
} from './heads.ts'
import type { MergeCounts } from './merge-counts.ts'

export type { MergeCounts } from './merge-counts.ts'

/**
 * What makes a record the same in every store: all of it but its card, and what later versions of
 * the program put beside it.
 */
export const recordDigest = ({
	number: _,
	signature: __,
	version = 1,
	...record
}: Carried): string =>
	digestOf({ ...record, card: null, version: version === 1 ? undefined : version })
/** What makes a draft's content the same. */
export const draftDigest = ({ value }: Pick<CarriedDraft, 'value'>): string => digestOf(value)

/**
 * What happens to a draft: nothing new, taken in, kept beside the own one, own one kept, own one
 * closed since it was signed away.
 */
type DraftStep = 'same' | 'take' | 'both' | 'keep' | 'drop'
/**
 * What happens to one draft of a returning pack.
 * @param home digest of the draft here, undefined where there is none
 * @param base digest it had when the pack went out, undefined where it was begun away
 * @param coming digest it has in the returning pack, undefined where it is gone there
 * @param takenBefore whether this very version came home before
 */
export function draftStep(
	home: string | undefined,
	base: string | undefined,
	coming: string | undefined,
	takenBefore: boolean,
): DraftStep {
	if (takenBefore) return 'same'
	if (coming === undefined) return home !== undefined && home === base ? 'drop' : 'keep'
	if (home === coming || (coming === base && home === undefined)) return 'same'
	if (home === undefined || home === base) return 'take'
	return coming === base ? 'keep' : 'both'
}
/** Whether nothing that came is unaccounted for, and nothing went that was here. */
export const countsAgree = (counts: MergeCounts): boolean =>
	counts.in === counts.added + counts.already + counts.quarantined + counts.heldBack &&
	(counts.refused ?? 0) + (counts.waits ?? 0) <= counts.quarantined &&
	counts.after === counts.before + counts.added

/**
 * A store as the rules see it. `versions` of an id are more than one only where contents differ:
 * the first is used, all are kept.
 * @internal
 */
export interface Holding {
	records: Carried[]
	drafts: CarriedDraft[]
}
/** What a pack brings, as far as the union of two stores looks at it. @internal */
export interface Coming extends Holding {
	bases: readonly DraftBase[]
}
/**
 * Union of two holdings. Contents that differ under one id are all kept. Drafts by the step rule.
 * @internal
 */
export function union(
	home: Holding,
	coming: Coming,
	taken: ReadonlySet<string> = new Set(),
): Holding {
	const records = new Map(home.records.map((record) => [recordDigest(record), record]))
	for (const record of coming.records)
		if (!records.has(recordDigest(record))) records.set(recordDigest(record), record)
	return {
		records: [...records.values()].sort(inOrder),
		drafts: unitedDrafts(home.drafts, coming, taken),
	}
}
function unitedDrafts(
	home: readonly CarriedDraft[],
	coming: Coming,
	taken: ReadonlySet<string>,
): CarriedDraft[] {
	const drafts = [...home]
	const bases = new Map(coming.bases.map((basis) => [basis.id, basis.digest]))
	for (const id of new Set([...bases.keys(), ...coming.drafts.map((draft) => draft.id)])) {
		const theirs = coming.drafts.find((draft) => draft.id === id)
		const digest = theirs && draftDigest(theirs)
		const base = bases.get(id)
		const own = drafts.filter((draft) => draft.id === id)
		const standing = withDigest(own, base) ?? withDigest(own, digest) ?? own[0]
		const known = digest !== undefined && taken.has(`${id} ${digest}`)
		const step = draftStep(standing && draftDigest(standing), base, digest, known)
		if ((step === 'take' || step === 'drop') && standing) drafts.splice(drafts.indexOf(standing), 1)
		if ((step === 'take' || step === 'both') && theirs) drafts.push(theirs)
	}
	return drafts
}
const withDigest = (drafts: readonly CarriedDraft[], digest: string | undefined) =>
	drafts.find((draft) => draftDigest(draft) === digest)
/** What a store shows after a union. @internal */
export interface View {
	/** What stands under each id: one digest, or several where contents differ. */
	records: Record<string, string[]>
	players: Record<string, Pick<Joining, 'value' | 'questions'>>
	consents: Record<string, ReturnType<typeof contestedConsents>>
	forks: ReturnType<typeof forksOf>
	drafts: string[]
}
/** The state a holding means: the same for the same records, however they arrived. @internal */
export function viewOf({ records, drafts }: Holding): View {
	const ordered = records.toSorted(
		(first, second) =>
			inOrder(first, second) || (recordDigest(first) < recordDigest(second) ? -1 : 1),
	)
	const byId = byKey(ordered, ({ id }) => id).map(
		([id, versions]) => [id, versions.map(recordDigest).sort()] as const,
	)
	const clashing = new Set(byId.flatMap(([id, digests]) => (digests.length > 1 ? [id] : [])))
	// what differs under one id is put aside as a whole: it decides nothing until a person has looked
	const sure = ordered.filter(({ id }) => !clashing.has(id))
	const joined = new Set(
		sure.flatMap(({ kind, value }) =>
			kind === 'answer' ? (value as { joins: string[] }).joins : [],
		),
	)
	const about = (kind: string) =>
		byKey(
			sure.filter((record) => record.kind === kind),
			(record) => record.about,
		)
	return {
		records: Object.fromEntries(byId),
		players: Object.fromEntries(
			about('player').map(([playerId, versions]) => {
				const { value, questions } = joinFields(versions, playerOf, joined)
				return [playerId, { value, questions }]
			}),
		),
		consents: Object.fromEntries(
			about('consent').map(([playerId, versions]) => [
				playerId,
				contestedConsents(versions as ConsentVersion[], joined),
			]),
		),
		forks: forksOf(sure, joined),
		drafts: drafts.map((draft) => `${draft.id} ${draftDigest(draft)}`).sort(),
	}
}
/** Records under their keys, in the order of the keys; those without one are left out. */
function byKey(
	records: readonly Carried[],
	keyOf: (record: Carried) => string | undefined,
): [string, Carried[]][] {
	const groups = new Map<string, Carried[]>()
	for (const record of records) {
		const key = keyOf(record)
		if (key !== undefined) groups.set(key, [...(groups.get(key) ?? []), record])
	}
	return [...groups].sort(([first], [second]) => (first < second ? -1 : 1))
}
/** The details in the value of a player's record. @internal */
export const playerOf = (value: unknown): Record<string, unknown> =>
	(value as { player: Record<string, unknown> }).player
