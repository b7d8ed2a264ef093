/** Undo and redo of an assessment: one's own entries, one by one, and never what others typed. */
import { describe, expect, it } from 'vitest'
import { History } from '../../renderer/screens/assessment/history.ts'
import { bare } from './typing.ts'

const start = bare()
const mass = bare({ body: { massKg: 50 } })
const massAndNotes = bare({ body: { massKg: 50 }, notes: 'a' })

describe('undo', () => {
	it('goes back and forward entry by entry, and keeps the step on screen', () => {
		const history = new History()
		history.note(start, mass, 0)
		history.note(mass, massAndNotes, 100)
		const shown = { ...massAndNotes, step: 'Feet' }
		history.note(massAndNotes, shown, 150)
		const once = history.back(shown)!
		expect(once).toEqual({ ...mass, step: 'Feet' })
		const twice = history.back(once)!
		expect(twice).toEqual({ ...start, step: 'Feet' })
		expect(history.back(twice)).toBeUndefined()
		expect(history.forward(twice)).toEqual({ ...mass, step: 'Feet' })
	})
	it('takes keys typed into one field within seconds as one entry', () => {
		const history = new History()
		const five = bare({ body: { massKg: 5 } })
		history.note(start, five, 0)
		history.note(five, mass, 300)
		expect(history.back(mass)).toEqual(start)
	})
	it('leaves what others typed since', () => {
		const history = new History()
		history.note(start, mass, 0)
		const withOthers = bare({ body: { massKg: 50, statureCm: 160 }, notes: 'theirs' })
		const back = history.back(withOthers)!
		expect(back).toEqual(bare({ body: { statureCm: 160 }, notes: 'theirs' }))
		expect(history.forward(back)).toEqual(withOthers)
	})
	it('passes by an entry that another wrote over, and goes on to the one before', () => {
		const history = new History()
		history.note(start, massAndNotes, 0)
		const complaint = bare({ ...massAndNotes.visit, complaint: 'heel' })
		history.note(massAndNotes, complaint, 5000)
		const over = bare({ ...complaint.visit, complaint: 'knee' })
		expect(history.back(over)).toEqual(bare({ complaint: 'knee' }))
	})
	it('does not take out a row that another typed into', () => {
		const history = new History()
		const row = bare({ footwear: [{ id: 'p1' }] })
		history.note(start, row, 0)
		const typed = bare({ footwear: [{ id: 'p1', name: 'match boots' }] })
		expect(history.back(typed)).toBeUndefined()
	})
})
