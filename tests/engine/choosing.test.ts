/** Rows of the queue chosen by click, Space, Shift and all at once; what an act can do with them. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
	allShown,
	type Choice,
	nothingChosen,
	pressed,
} from '../../renderer/screens/outbox/choosing.ts'
import { type OutboxState, outboxStates } from '../../shared/desk/outbox/item.ts'
import { manyActs, possible } from '../../shared/desk/outbox/many.ts'

const shown = ['a', 'b', 'c', 'd', 'e', 'f']
const press = (choice: Choice, id: string, isRange = false) =>
	pressed(choice, shown, { id, isRange })
const chosen = ({ ids }: Choice) => [...ids].sort().join('')

test('one, a range in either direction, and a range taken off again', () => {
	const two = press(press(nothingChosen, 'b'), 'e', true)
	expect(chosen(two)).toBe('bcde')
	expect(chosen(press(two, 'c', true))).toBe('b')
	expect(chosen(press(press(nothingChosen, 'e'), 'b', true))).toBe('bcde')
	// where the row before is not shown any more, the row alone
	expect(
		chosen(pressed({ ids: new Set(['x']), last: 'x' }, shown, { id: 'c', isRange: true })),
	).toBe('cx')
	expect(chosen(allShown({ ids: new Set(['x']), last: undefined }, shown, true))).toBe('abcdefx')
	expect(chosen(allShown({ ids: new Set(['x', 'a']), last: 'a' }, shown, false))).toBe('x')
})
test('whatever was pressed, the row pressed last stands as it was asked, and nothing unknown is chosen', () => {
	const presses = fc.array(fc.record({ id: fc.constantFrom(...shown), isRange: fc.boolean() }))
	fc.assert(
		fc.property(presses, (all) => {
			let choice = nothingChosen
			for (const one of all) {
				const next = pressed(choice, shown, one)
				expect(next.ids.has(one.id)).toBe(!choice.ids.has(one.id))
				expect([...next.ids].every((id) => shown.includes(id))).toBe(true)
				choice = next
			}
		}),
	)
})
test('each chosen item can be acted on or is counted under one reason; the unseen is never released', () => {
	const anItem = fc.record({
		state: fc.constantFrom<OutboxState>(...outboxStates),
		sending: fc.boolean(),
		compared: fc.boolean(),
		breachId: fc.option(fc.constant('b'), { nil: undefined }),
	})
	fc.assert(
		fc.property(fc.array(anItem), fc.constantFrom(...manyActs), (items, act) => {
			const { can, because } = possible(act, items)
			expect(can.length + because.reduce((sum, { count }) => sum + count, 0)).toBe(items.length)
			expect(new Set(because.map(({ says }) => says)).size).toBe(because.length)
			if (act === 'release')
				expect(can.every(({ state, compared }) => state === 'to-check' && compared)).toBe(true)
			if (act === 'close') expect(can.some(({ state }) => state === 'uncertain')).toBe(false)
			expect(can.some(({ sending }) => sending)).toBe(false)
		}),
	)
})
