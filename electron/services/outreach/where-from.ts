/** Where something was written and by whom: at home, or away on which laptop. */
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { isOwn } from './arrival.ts'
import { packLog } from './pack-log.ts'

type Question = OutputOf<'outreach.list'>['questions'][number]
type From = NonNullable<Question['fields'][number]['values'][number]['from']>
type Reads = Pick<Deps, 'openAll' | 'store'>
/** Rows of the trail that say who wrote what they name. */
const writing = ['create', 'update', 'amend', 'sign']

/** By what a row of the trail names, who wrote it last; what nobody wrote here is left out. */
export function writersHere(
	{ people }: Pick<Memory, 'people'>,
	{ store }: Pick<Deps, 'store'>,
	ids: readonly string[],
): Map<string, string> {
	const open = new Set(ids)
	const writers = new Map<string, string>()
	store.auditPage(Number.MAX_SAFE_INTEGER, Math.max(1, open.size), {
		wanted: ({ objectRef, function: does, personId }) => {
			const id = objectRef.slice(objectRef.indexOf(':') + 1)
			if (!open.has(id) || !writing.includes(does)) return false
			open.delete(id)
			const name = personId === null ? undefined : people.nameOf(personId)
			if (name !== undefined) writers.set(id, name)
			return true
		},
	})
	return writers
}
/**
 * What an installation that is not this one was: the laptop of a pack. Whoever works on it writes as
 * the person who made the pack.
 */
function laptopOf(reads: Reads, origin: string): Omit<From, 'home'> {
	const { out, merged } = packLog(reads)
	const back = merged.findLast((file) => file.origin === origin)
	const pack = out.find(({ packId }) => packId === back?.answers)
	return present({ by: pack?.by, packOf: pack?.madeAt })
}
/** The questions, each value with where and by whom it was written. */
export function withOrigins(
	memory: Pick<Memory, 'people'>,
	reads: Reads,
	questions: readonly (Question & { origins: ReadonlyMap<string, string> })[],
): Question[] {
	const ids = questions.flatMap(({ origins }) => [...origins.keys()])
	if (ids.length === 0) return []
	const writers = writersHere(memory, reads, ids)
	return questions.map(({ origins, ...question }) => ({
		...question,
		fields: question.fields.map(({ field, values }) => ({
			field,
			values: values.map((value) => {
				const origin = origins.get(value.record) ?? ''
				const from: From = isOwn(reads.store, origin)
					? { home: true, ...present({ by: writers.get(value.record) }) }
					: { home: false, ...laptopOf(reads, origin) }
				return { ...value, from }
			}),
		})),
	}))
}
