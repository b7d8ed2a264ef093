/**
 * Two drafts of one visit from two places: joined where they do not contradict one another, asked
 * where they do; nothing is lost.
 */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { joinDraftContents } from '../../shared/desk/outreach/drafts.ts'

const fields = ['a', 'b', 'c.d', 'c.e', 'f.g.h'] as const
const put = (entries: Record<string, unknown>) => {
	const whole: Record<string, unknown> = {}
	for (const [path, value] of Object.entries(entries)) {
		const keys = path.split('.')
		let here = whole
		for (const key of keys.slice(0, -1)) {
			here[key] ??= {}
			here = here[key] as Record<string, unknown>
		}
		here[keys.at(-1)!] = value
	}
	return whole
}
const value = fc.constantFrom<unknown>(1, 2, 'x', [1, 2], [2, 1])
const some = fc.dictionary(fc.constantFrom(...fields), value, { maxKeys: 5 })

test('fields that only one place entered or changed all stand, whichever comes first', () => {
	fc.assert(
		fc.property(some, some, some, (base, first, second) => {
			const mine = { ...base, ...first }
			const theirs = { ...base, ...second }
			const either = joinDraftContents(put(base), put(mine), put(theirs))
			const other = joinDraftContents(put(base), put(theirs), put(mine))
			expect(either.conflicts).toEqual(other.conflicts)
			const same = (left: unknown, right: unknown) => JSON.stringify(left) === JSON.stringify(right)
			const expected = fields.filter(
				(path) =>
					!same(mine[path], theirs[path]) &&
					!same(mine[path], base[path]) &&
					!same(theirs[path], base[path]),
			)
			expect(either.conflicts).toEqual([...expected].sort())
			if (expected.length > 0) return
			expect(either.value).toEqual(other.value)
			const whole = Object.fromEntries(
				fields.flatMap((path) => {
					const stands = same(mine[path], base[path]) ? theirs[path] : mine[path]
					return stands === undefined ? [] : [[path, stands]]
				}),
			)
			expect(either.value).toEqual(put(whole))
		}),
		{ numRuns: 1000 },
	)
})
test(
	'a value taken out in one place stays out where the other did not touch it; joined with ' +
		'itself nothing changes',
	() => {
		expect(joinDraftContents({ a: 1, b: 2 }, { b: 2 }, { a: 1, b: 3 })).toEqual({
			value: { b: 3 },
			conflicts: [],
		})
		fc.assert(
			fc.property(some, some, (base, mine) => {
				expect(joinDraftContents(put(base), put(mine), put(mine))).toEqual({
					value: put(mine),
					conflicts: [],
				})
			}),
		)
	},
)
test('measured here and marked as not measured there is asked; a choice settles what both changed', () => {
	const first = { visit: { feet: { left: { heelToToeMm: 246 } } } }
	expect(
		joinDraftContents(undefined, first, {
			visit: { notMeasured: { 'feet.left.heelToToeMm': 'pain' } },
		}).conflicts,
	).toEqual(['visit.notMeasured.feet.left.heelToToeMm'])
	expect(
		joinDraftContents(
			undefined,
			first,
			{ visit: { feet: { left: { heelToToeMm: 250 } } } },
			() => 'second',
		),
	).toEqual({ value: { visit: { feet: { left: { heelToToeMm: 250 } } } }, conflicts: [] })
})
test('groups without a value stay groups', () => {
	expect(
		joinDraftContents(
			undefined,
			{ visit: { screening: {} } },
			{ visit: { screening: { nightPain: true } } },
		).value,
	).toEqual({ visit: { screening: { nightPain: true } } })
	expect(joinDraftContents(undefined, { visit: { screening: {} } }, { visit: {} }).value).toEqual({
		visit: { screening: {} },
	})
})
