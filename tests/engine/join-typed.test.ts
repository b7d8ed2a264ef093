/** Two windows on one draft: fields, lists and groups, one by one. */
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { draftContentSchema } from '../../shared/desk/visits/calls.ts'
import { changedEntries, joinTyped, takeIn } from '../../shared/desk/visits/join-typed.ts'
import { keepStanding, takeOther } from '../../shared/engine/visit/entry-at.ts'
import { heldTogether } from '../../shared/engine/visit/row-lists.table.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { bare, type Json, joined } from './typing.ts'

describe('value, text and reason of one field', () => {
	const base = bare()
	const mine = bare({}, { raw: { 'body.massKg': '5o' } })
	it('are one entry: text here and a value there are two entries of it', () => {
		const { content, twice } = joined({ base, mine, theirs: bare({ body: { massKg: 50 } }) })
		expect(content).toMatchObject({ raw: { 'body.massKg': '5o' } })
		expect(content.visit.body).toBeUndefined()
		expect(twice).toEqual([{ keys: ['visit', 'body', 'massKg'], loser: 'theirs', other: [50] }])
	})
	it('so are a value and a reason why it was not measured', () => {
		const theirs = bare({ notMeasured: { 'body.massKg': 'pain' } })
		const { content, twice } = joined({ base, mine: bare({ body: { massKg: 50 } }), theirs })
		expect(content.visit).toMatchObject({ body: { massKg: 50 } })
		expect(content.visit.notMeasured).toBeUndefined()
		expect(twice).toHaveLength(1)
	})
})
describe('lists', () => {
	const heel = { condition: 'plantar-heel-pain', side: 'left', status: 'current' } as const
	const toe = { condition: 'hallux-valgus', side: 'both', status: 'current' } as const
	const knee = { condition: 'patellofemoral-pain', side: 'right', status: 'past' } as const
	it('keep what was typed into an item while another before it was taken out', () => {
		const base = bare({ conditions: [heel, toe] })
		const { content, twice } = joined({
			base,
			mine: bare({ conditions: [heel, { ...toe, painWorst: 4 }] }),
			theirs: bare({ conditions: [toe, knee] }),
		})
		expect(content.visit.conditions).toEqual([{ ...toe, painWorst: 4 }, knee])
		expect(twice).toEqual([])
	})
	it('tell two items of one name by what else they say', () => {
		const right = { ...heel, side: 'right' } as const
		const { content } = joined({
			base: bare({ conditions: [heel, right] }),
			mine: bare({ conditions: [right] }),
			theirs: bare({ conditions: [heel, { ...right, painWorst: 6 }] }),
		})
		expect(content.visit.conditions).toEqual([{ ...right, painWorst: 6 }])
	})
	it('have an item once that both added', () => {
		const { content, twice } = joined({
			base: bare(),
			mine: bare({ conditions: [toe, heel] }),
			theirs: bare({ conditions: [{ ...heel, painWorst: 3 }] }),
		})
		expect(content.visit.conditions).toEqual([toe, { ...heel, painWorst: 3 }])
		expect(twice).toEqual([])
	})
	it('take an item out that the other left alone; one typed into comes back and is asked about', () => {
		const base = bare({ conditions: [heel, toe] })
		const gone = bare({ conditions: [heel] })
		expect(joined({ base, mine: gone, theirs: base }).content.visit.conditions).toEqual([heel])
		const typed = bare({ conditions: [heel, { ...toe, note: 'since spring' }] })
		for (const three of [
			{ base, mine: gone, theirs: typed },
			{ base, mine: typed, theirs: gone },
		]) {
			const { content, twice } = joined(three)
			expect(content.visit.conditions).toEqual([heel, { ...toe, note: 'since spring' }])
			expect(twice).toEqual([
				{
					keys: ['visit', 'conditions', 'hallux-valgus'],
					loser: three.mine === gone ? 'mine' : 'theirs',
					other: undefined,
				},
			])
		}
	})
	it('carry text that is no value yet with its item', () => {
		const pair = (id: string) => ({ id, name: id })
		const { content } = joined({
			base: bare({ footwear: [pair('a'), pair('b')] }),
			mine: bare({ footwear: [pair('a'), pair('b')] }, { raw: { 'footwear.1.size': '39x' } }),
			theirs: bare({ footwear: [pair('b')] }),
		})
		expect(content.visit.footwear).toEqual([pair('b')])
		expect(content.raw).toEqual({ 'footwear.0.size': '39x' })
	})
	it('of terms take what each of them ticked', () => {
		const surfaces = (...list: NonNullable<NonNullable<Visit['play']>['surfaces']>) =>
			bare({ play: { surfaces: list } })
		const { content, twice } = joined({
			base: surfaces('hall'),
			mine: surfaces('hall', 'artificial-3g'),
			theirs: surfaces('natural-firm'),
		})
		expect([...(content.visit.play?.surfaces ?? [])].sort()).toEqual([
			'artificial-3g',
			'natural-firm',
		])
		expect(twice).toEqual([])
	})
	it('of answers keep the answers of both to different questions', () => {
		const answer = (question: string, why?: string) => ({
			question,
			choice: why ? ('set-aside' as const) : ('as-proposed' as const),
			of: 'a'.repeat(64),
			...(why && { why }),
		})
		const answers = (...list: ReturnType<typeof answer>[]) =>
			bare({}, { decisions: { lines: [], actions: [], answers: list } })
		const { content, twice } = joined({
			base: answers(),
			mine: answers(answer('size'), answer('raise')),
			theirs: answers(answer('review'), answer('size', 'not today')),
		})
		expect(content.decisions.answers?.map(({ question }) => question)).toEqual([
			'size',
			'raise',
			'review',
		])
		expect(twice.map(({ keys }) => keys)).toEqual([['decisions', 'answers', 'size']])
	})
})
describe('a group that cannot be without one of its fields', () => {
	const injury = { side: 'left', daysAgo: 2 } as const
	it('comes back whole where one took it out and the other typed into it', () => {
		const base = bare({ screening: { injury } })
		const gone = bare({ screening: {} })
		const typed = bare({ screening: { injury: { ...injury, daysAgo: 3 } } })
		const { content, twice } = joined({ base, mine: gone, theirs: typed })
		expect(content.visit.screening?.injury).toEqual({ ...injury, daysAgo: 3 })
		expect(twice).toEqual([
			{ keys: ['visit', 'screening', 'injury'], loser: 'mine', other: undefined },
		])
	})
	it('is listed wherever the schema has one', () => {
		const found: string[] = []
		const look = (schema: Json, path: string): void => {
			const inner = schema.anyOf?.find(({ type }) => type === 'object') ?? schema
			for (const [key, part] of Object.entries(inner.properties ?? {})) {
				const here = `${path}.${key}`
				if (part.required?.length && !inner.required?.includes(key)) found.push(here)
				look(part, here)
			}
		}
		const { visit, decisions } = draftContentSchema.shape
		look(z.toJSONSchema(visit, { io: 'input', unrepresentable: 'any' }) as Json, 'visit')
		look(z.toJSONSchema(decisions, { io: 'input', unrepresentable: 'any' }) as Json, 'decisions')
		// whose visit it is, is no entry
		const typed = found.filter((path) => !path.startsWith('visit.player.'))
		expect(typed.sort()).toEqual([...heldTogether].sort())
	})
})
describe('what does not go together', () => {
	it('what goes beyond a bound is said, not cut off', () => {
		const rows = (from: number, count: number) =>
			bare({
				footwear: Array.from({ length: count }, (_, at) => ({ id: `p${from + at}` })),
			})
		const done = joinTyped({ base: bare(), mine: rows(0, 15), theirs: rows(20, 15) })
		expect(done).toMatchObject({ problems: [{ path: 'visit.footwear', code: 'too-long' }] })
	})
})
describe('what a window takes in', () => {
	it('never changes what is under the hand, and shows it once the hand is gone', () => {
		const base = bare({ body: { massKg: 50 } })
		const theirs = bare({ body: { massKg: 52, statureCm: 160 } })
		const held = takeIn({ base, mine: base, theirs }, ['visit.body.massKg'])
		expect(held.content.visit.body).toEqual({ massKg: 50, statureCm: 160 })
		expect(held.base.visit.body).toEqual({ massKg: 50, statureCm: 160 })
		expect(held.waits).toBe(true)
		const left = takeIn({ base: held.base, mine: held.content, theirs }, [])
		expect(left).toEqual({ content: theirs, base: theirs, waits: false })
	})
	it('keeps the place of its own items, and holds a whole list while a hand is in it', () => {
		const row = (condition: 'hallux-valgus' | 'plantar-heel-pain') =>
			({ condition, side: 'left', status: 'current' }) as const
		const mine = bare({ conditions: [row('hallux-valgus')] })
		const theirs = bare({ conditions: [row('plantar-heel-pain')] })
		const three = { base: bare(), mine, theirs }
		expect(takeIn(three, []).content.visit.conditions).toEqual([
			row('hallux-valgus'),
			row('plantar-heel-pain'),
		])
		expect(takeIn(three, ['visit.conditions']).content).toEqual(mine)
	})
})
describe('an entry that was typed twice', () => {
	const pair = { id: 'p1', name: 'match boots', size: 39 }
	const draft = bare({ footwear: [{ id: 'p0' }, pair] })
	const line = {
		path: 'visit.footwear.p1.size',
		keys: ['visit', 'footwear', 'p1', 'size'],
		is: '[39.5]',
		by: 'Imke Darrow',
		at: '2027-01-20T09:00:00.000Z',
		standsBy: 'Imke Darrow',
		standsAt: '2027-01-20T09:00:05.000Z',
	}
	const both = { ...draft, typedTwice: [line] }
	it('is settled by keeping what stands, or by taking the other', () => {
		expect(keepStanding(both, line)).toEqual(draft)
		expect(takeOther(both, line)).toEqual(
			bare({ footwear: [{ id: 'p0' }, { ...pair, size: 39.5 }] }),
		)
	})
	it('may be an item of a list that the other took out', () => {
		const gone = {
			...line,
			path: 'visit.footwear.p1',
			keys: ['visit', 'footwear', 'p1'],
			is: 'null',
		}
		expect(takeOther({ ...draft, typedTwice: [gone] }, gone)).toEqual(
			bare({ footwear: [{ id: 'p0' }] }),
		)
	})
	it('stays settled where another window still has it', () => {
		const { content } = joined({ base: both, mine: keepStanding(both, line), theirs: both })
		expect(content.typedTwice).toBeUndefined()
	})
})
it('names the entries that were typed, and no others', () => {
	const before = bare({ body: { massKg: 50 }, footwear: [{ id: 'p1', size: 39 }] })
	const now = bare({ body: { massKg: 50 }, footwear: [{ id: 'p1', size: 40 }], notes: 'x' })
	expect(changedEntries(before, now)).toEqual([
		['visit', 'footwear', 'p1', 'size'],
		['visit', 'notes'],
	])
})
