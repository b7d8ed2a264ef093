/** Drafts for the tests of two windows: as short as may be, joined, and as entries. */
import { leavesOf } from '../../shared/desk/outreach/leaves.ts'
import type { DraftContent } from '../../shared/desk/visits/calls.ts'
import { joinTyped, type Three } from '../../shared/desk/visits/join-typed.ts'
import { entriesOf } from '../../shared/engine/visit/entries.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

export const draftOf = (visit: Visit, more: Partial<DraftContent> = {}): DraftContent => ({
	visit,
	raw: {},
	decisions: { lines: [], actions: [] },
	...more,
})
const player = {
	givenName: 'Given',
	familyName: 'Family',
	birthDate: '2009-02-03',
	sex: 'female',
} as const
export const bare = (visit: Partial<Visit> = {}, more: Partial<DraftContent> = {}): DraftContent =>
	draftOf(
		{ format: 'lastwright-visit', version: 1, player, visitDate: '2027-01-20', ...visit },
		more,
	)
/** A schema as its JSON Schema says it. */
export interface Json {
	type?: string
	properties?: Record<string, Json>
	required?: string[]
	anyOf?: Json[]
}
/** Both windows, and what each made of what they began from. */
export function joined(three: Three) {
	const done = joinTyped(three)
	if ('problems' in done) throw new Error(JSON.stringify(done.problems))
	return done
}
/** Every entry by its path; a group without one says nothing. */
export const leaves = (content: DraftContent) =>
	new Map(
		[...leavesOf(entriesOf(content))]
			.filter(([, value]) => Array.isArray(value))
			.map(([path, value]) => [path, JSON.stringify(value)]),
	)
