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
	type Version,
} from './heads.ts'

export const recordDigest = (record: Carried): string => digestOf({ ...record, card: null })
export const draftDigest = ({ value }: Pick<CarriedDraft, 'value'>): string => digestOf(value)

/**
 * What happens to a draft: nothing new, taken in, kept beside the own one, own one kept, own one
 * closed since it was signed away.
 */
export type DraftStep = 'same' | 'take' | 'both' | 'keep' | 'drop'
/**
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
/**
 * Counts that are shown and kept. What came in is what was added, already there, put aside or held
 * back.
 */
export interface MergeCounts {
	in: number
	added: number
	already: number
	quarantined: number
	heldBack: number
	before: number
	after: number
}
export const countsAgree = (one: MergeCounts): boolean =>
	one.in === one.added + one.already + one.quarantined + one.heldBack &&
	one.after === one.before + one.added

/**
 * A store as the rules see it. `versions` of an id are more than one only where contents differ:
 * the first is used, all are kept.
 */
export interface Holding {
	records: Carried[]
	drafts: CarriedDraft[]
}
export interface Coming extends Holding {
	bases: readonly DraftBase[]
}
/**
 * Union of two holdings. Contents that differ under one id are all kept. Drafts by the step rule.
 */
export function union(
	home: Holding,
	coming: Coming,
	taken: ReadonlySet<string> = new Set(),
): Holding {
	const records = new Map(home.records.map((record) => [recordDigest(record), record]))
	for (const record of coming.records)
		if (!records.has(recordDigest(record))) records.set(recordDigest(record), record)
	const drafts = [...home.drafts]
	const bases = new Map(coming.bases.map((basis) => [basis.id, basis.digest]))
	const ids = new Set([...bases.keys(), ...coming.drafts.map((draft) => draft.id)])
	for (const id of ids) {
		const theirs = coming.drafts.find((draft) => draft.id === id)
		const digest = theirs && draftDigest(theirs)
		const own = drafts.filter((draft) => draft.id === id)
		const base = bases.get(id)
		const atBase = own.find((one) => draftDigest(one) === base)
		const chosen = atBase ?? own.find((one) => draftDigest(one) === digest) ?? own[0]
		const step = draftStep(
			chosen && draftDigest(chosen),
			base,
			digest,
			digest !== undefined && taken.has(`${id} ${digest}`),
		)
		if ((step === 'take' || step === 'drop') && chosen) drafts.splice(drafts.indexOf(chosen), 1)
		if ((step === 'take' || step === 'both') && theirs) drafts.push(theirs)
	}
	return { records: [...records.values()].sort(inOrder), drafts }
}
export interface View {
	/** What stands under each id: one digest, or several where contents differ. */
	records: Record<string, string[]>
	players: Record<string, Pick<Joining, 'value' | 'questions'>>
	consents: Record<string, ReturnType<typeof contestedConsents>>
	forks: ReturnType<typeof forksOf>
	drafts: string[]
}
/** The state a holding means: the same for the same records, however they arrived. */
export function viewOf({ records, drafts }: Holding): View {
	const ordered = records.toSorted(
		(a, b) => inOrder(a, b) || (recordDigest(a) < recordDigest(b) ? -1 : 1),
	)
	const byId: Record<string, string[]> = {}
	for (const one of ordered) byId[one.id] = [...(byId[one.id] ?? []), recordDigest(one)].sort()
	// what differs under one id is put aside as a whole: it decides nothing until a person has looked
	const sure = ordered.filter((one) => byId[one.id]?.length === 1)
	const joined = new Set(
		sure
			.filter((one) => one.kind === 'answer')
			.flatMap((one) => (one.value as { joins: string[] }).joins),
	)
	const about = (kind: string) => {
		const groups = new Map<string, Carried[]>()
		for (const one of sure)
			if (one.kind === kind && one.about !== undefined)
				groups.set(one.about, [...(groups.get(one.about) ?? []), one])
		return [...groups].sort(([a], [b]) => (a < b ? -1 : 1))
	}
	return {
		records: Object.fromEntries(Object.entries(byId).sort(([a], [b]) => (a < b ? -1 : 1))),
		players: Object.fromEntries(
			about('player').map(([playerId, versions]) => {
				const { value, questions } = joinFields(versions as Version[], playerOf, joined)
				return [playerId, { value, questions }]
			}),
		),
		consents: Object.fromEntries(
			about('consent').map(([playerId, versions]) => [
				playerId,
				contestedConsents(versions as ConsentVersion[], joined),
			]),
		),
		forks: forksOf(sure as (Version & { kind: string })[], joined),
		drafts: drafts.map((draft) => `${draft.id} ${draftDigest(draft)}`).sort(),
	}
}
export const playerOf = (value: unknown): Record<string, unknown> =>
	(value as { player: Record<string, unknown> }).player
