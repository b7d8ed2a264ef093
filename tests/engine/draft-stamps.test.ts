/** Stamps of drafts, case by case: what is asked, what is told, what version 0.1.0 left. */
import { describe, expect, test } from 'vitest'
import { joinStampedDrafts } from '../../shared/desk/outreach/drafts.ts'
import { type Stamped, stampChanges } from '../../shared/desk/outreach/stamps.ts'

const visit = (feet: Record<string, unknown>, more: object = {}) => ({
	visit: { feet, ...more },
	raw: {},
})
const type = (draft: Stamped | undefined, content: unknown, origin: string, at = '2027-01-20') =>
	stampChanges(draft, content, { at, origin })

describe('a draft that went out on a pack', () => {
	const out = type(undefined, visit({ left: 246, right: 247 }), 'home', '2027-01-18')
	test('needs no question for what only one side changed since, without its base', () => {
		const home = type(out, visit({ left: 250, right: 247 }), 'home')
		const away = type(out, visit({ left: 246 }), 'laptop')
		const { content, conflicts } = joinStampedDrafts(undefined, home, away)
		expect([content, conflicts]).toEqual([visit({ left: 250 }), []])
	})
	test('tells when and where both typed what both changed', () => {
		const home = type(out, visit({ left: 250, right: 247 }), 'home', '2027-01-20T09:14:00Z')
		const away = type(out, visit({ left: 252, right: 247 }), 'laptop', '2027-01-20T10:02:00Z')
		expect(home.stamps['visit.feet.left']).toMatchObject({
			at: '2027-01-20T09:14:00Z',
			origin: 'home',
		})
		expect(joinStampedDrafts(undefined, home, away).conflicts).toEqual([
			{
				path: 'visit.feet.left',
				first: home.stamps['visit.feet.left'],
				second: away.stamps['visit.feet.left'],
			},
		])
	})
	test('asks where one took out what the other typed anew', () => {
		const home = type(out, visit({ right: 247 }), 'home')
		const away = type(out, visit({ left: 252, right: 247 }), 'laptop')
		const { conflicts } = joinStampedDrafts(undefined, home, away)
		expect(conflicts.map(({ path }) => path)).toEqual(['visit.feet.left'])
		const chosen = joinStampedDrafts(undefined, home, away, () => 'first')
		expect(chosen).toMatchObject({ content: visit({ right: 247 }), conflicts: [] })
		// what a person chose stands against the same draft that comes once more
		expect(joinStampedDrafts(undefined, chosen, away)).toMatchObject({
			content: visit({ right: 247 }),
			conflicts: [],
		})
	})
	test('does not ask of a value that was tried and taken back, where its base is known', () => {
		const tried = type(out, visit({ left: 999, right: 247 }), 'home')
		const home = type(tried, visit({ left: 246, right: 247 }), 'home')
		const away = type(out, visit({ left: 252, right: 247 }), 'laptop')
		expect(joinStampedDrafts(out.content, home, away)).toMatchObject({
			content: visit({ left: 252, right: 247 }),
			conflicts: [],
		})
		expect(joinStampedDrafts(undefined, home, away).conflicts).toHaveLength(1)
	})
})
describe('drafts of version 0.1.0, which have no stamps', () => {
	test('are joined by what both began from, and asked where that is not known', () => {
		const home = type(undefined, visit({ left: 246 }), 'home')
		const away = { content: visit({ left: 252 }) }
		expect(joinStampedDrafts(home.content, home, away)).toMatchObject({
			content: visit({ left: 252 }),
			conflicts: [],
		})
		expect(joinStampedDrafts(undefined, home, away).conflicts).toEqual([
			{ path: 'visit.feet.left', first: home.stamps['visit.feet.left'], second: undefined },
		])
	})
	test('get stamps for what is typed from now on', () => {
		const old = { content: visit({ left: 246, right: 247 }) }
		const { stamps, seen } = type(old, visit({ left: 250, right: 247 }), 'home')
		const { tick } = stamps['visit.feet.left']!
		expect(stamps).toEqual({ 'visit.feet.left': { at: '2027-01-20', origin: 'home', tick } })
		expect(seen).toEqual({ home: tick })
	})
	test('never make a new entry look like one that is known, where their stamps were lost', () => {
		const out = type(undefined, visit({ left: 246 }), 'home', '2027-01-18')
		const away = type(out, visit({ left: 252 }), 'laptop', '2027-01-19')
		// home: the draft came back once by a PC of version 0.1.0
		const home = type({ content: out.content }, visit({ left: 250 }), 'home', '2027-01-20')
		expect(joinStampedDrafts(undefined, home, away).conflicts).toHaveLength(1)
	})
	test('that are saved twice in a second, or with a clock set back, count on', () => {
		let draft = type(undefined, visit({ left: 1 }), 'home')
		for (const at of ['2027-01-20', '2020-01-01', 'no clock']) {
			const before = draft.stamps['visit.feet.left']!.tick
			draft = type(draft, visit({ left: before }), 'home', at)
			expect(draft.stamps['visit.feet.left']!.tick).toBeGreaterThan(before)
		}
	})
})
test('each begun for itself: what only one has stands, what both have otherwise is asked', () => {
	const home = type(undefined, visit({ left: 246 }, { notes: 'one' }), 'home')
	const away = type(undefined, visit({ right: 247 }, { notes: 'two' }), 'laptop')
	const { content, conflicts } = joinStampedDrafts(undefined, home, away)
	expect(content).toMatchObject(visit({ left: 246, right: 247 }))
	expect(conflicts.map(({ path }) => path)).toEqual(['visit.notes'])
})
test('a value here and a group there are one question, and either is kept whole', () => {
	const out = type(undefined, { decisions: {} }, 'home')
	const home = type(out, { decisions: { insert: 'none' } }, 'home')
	const away = type(out, { decisions: { insert: { left: 3, right: 4 } } }, 'laptop')
	expect(joinStampedDrafts(undefined, home, away).conflicts.map(({ path }) => path)).toEqual([
		'decisions.insert',
	])
	for (const [side, stands] of [
		['first', home],
		['second', away],
	] as const)
		expect(joinStampedDrafts(undefined, home, away, () => side)).toMatchObject({
			content: stands.content,
			conflicts: [],
		})
})
test('where the screen stood and the order of keys are no change', () => {
	const out = type(undefined, { visit: { a: [{ x: 1, y: 2 }] }, step: 'feet' }, 'home')
	const again = type(out, { step: 'ankle', visit: { a: [{ y: 2, x: 1 }] } }, 'home')
	expect([again.stamps, again.seen]).toEqual([out.stamps, out.seen])
	expect(Object.keys(out.stamps)).toEqual(['visit.a'])
})
