/** What the shelf learns of pairs measured on the foot: only what a person says, and each pair once. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
	differingIn,
	learned,
	type MeasuredPair,
	pairsMeasured,
	toLearn,
	withLearned,
} from '../../shared/desk/shelf/learning.ts'
import { parseShelf, type Shelf } from '../../shared/engine/visit/shelf.ts'

const size = { system: 'uk', label: 6, insideLengthMm: 258, ballWidthMm: 90 } as const
const shelf: Shelf = {
	format: 'lastwright-shelf',
	version: 1,
	models: [{ id: 'tern', name: 'Tern', sole: 'firm-ground', sizes: [size, { ...size, label: 7 }] }],
}
const pair = (number: number, insideLengthMm: number, more: Partial<MeasuredPair> = {}) => ({
	of: String(number).padStart(64, '0'),
	on: '2027-01-20',
	model: 'tern',
	system: 'uk' as const,
	label: 6,
	insideLengthMm,
	...more,
})
const onFoot = { model: 'tern', lengthBy: 'gauge' } as const
const owned = { id: 'p1', sizeSystem: 'uk', size: 6, insideLengthMm: 254, onFoot } as const
const first = (of: Shelf | undefined) => of!.models[0]!.sizes[0]!

describe('what is asked', () => {
	it('is the difference of a pair that was measured', () => {
		const [asked, ...others] = toLearn(shelf, [pair(1, 254)])
		expect(others).toEqual([])
		expect(asked).toMatchObject({
			name: 'Tern',
			measuredMm: 254,
			listedMm: 258,
			medianMm: -4,
			afterMm: 254,
		})
	})
	it('is nothing by a label, of no model, of a size or model that the shelf does not have', () => {
		const of = (more: object) =>
			pairsMeasured({ visitDate: '2027-01-20', footwear: [{ ...owned, ...more }] }, 'player')
		expect(of({})).toHaveLength(1)
		expect(of({ onFoot: { ...onFoot, lengthBy: 'label' } })).toEqual([])
		expect(of({ onFoot: { model: 'tern' } })).toEqual([])
		expect(of({ onFoot: { lengthBy: 'gauge' } })).toEqual([])
		expect(toLearn(shelf, [pair(1, 254, { label: 5 }), pair(2, 254, { model: 'gone' })])).toEqual(
			[],
		)
	})
	it('names nobody: the same pair has one digest, that of another player another', () => {
		const of = (player: string) =>
			pairsMeasured({ visitDate: '2027-01-20', footwear: [owned] }, player)[0]!.of
		expect(of('someone')).toBe(of('someone'))
		expect(of('someone')).not.toBe(of('other'))
		expect(of('someone')).toMatch(/^[0-9a-f]{64}$/)
	})
	it('is each pair once, as it was measured last, and no more once it was answered', () => {
		const twice = [pair(1, 255, { on: '2027-03-01' }), pair(1, 254)]
		expect(toLearn(shelf, twice).map(({ measuredMm }) => measuredMm)).toEqual([255])
		for (const answer of ['take-over', 'count-only', 'leave-out'] as const)
			expect(toLearn(learned(shelf, pair(1, 254), answer)!, twice)).toEqual([])
	})
})
describe('what is answered', () => {
	it('takes over the middle of what was measured, and keeps what was listed', () => {
		const one = learned(shelf, pair(1, 254, { ballWidthMm: 88 }), 'take-over')!
		expect(first(one)).toMatchObject({ insideLengthMm: 254, ballWidthMm: 88 })
		const two = learned(one, pair(2, 256), 'take-over')!
		expect(first(two)).toMatchObject({
			insideLengthMm: 255,
			ballWidthMm: 88,
			listed: { insideLengthMm: 258, ballWidthMm: 90 },
		})
		expect(differingIn(two.models[0]!)).toEqual({ pairs: 2, differ: 2, medianMm: -3 })
		expect(two.models[0]!.sizes[1]).toEqual({ ...size, label: 7 })
		expect(parseShelf(two).ok).toBe(true)
	})
	it('counts without a change, or leaves out what is no measure of the model', () => {
		const counts = learned(shelf, pair(1, 254), 'count-only')!
		expect(first(counts).insideLengthMm).toBe(258)
		expect(differingIn(counts.models[0]!)).toEqual({ pairs: 1, differ: 1, medianMm: -4 })
		const out = learned(shelf, pair(1, 254), 'leave-out')!
		expect(differingIn(out.models[0]!)).toBeUndefined()
	})
	it('outlives the form and the table, which know nothing of it', () => {
		const kept = learned(shelf, pair(1, 254), 'take-over')!
		const typed = { ...shelf, models: [{ ...shelf.models[0]!, name: 'Tern two' }] }
		const saved = withLearned(typed, kept)
		expect(saved.models[0]!.name).toBe('Tern two')
		expect(first(saved).measured).toEqual(first(kept).measured)
		expect(first(withLearned(kept, undefined)).measured).toBeUndefined()
	})
	it('is one shelf in whatever order pairs were measured', () => {
		fc.assert(
			fc.property(
				fc.array(fc.integer({ min: 240, max: 270 }), { minLength: 1, maxLength: 8 }),
				(all) => {
					const pairs = all.map((mm, at) => pair(at, mm))
					const take = (list: MeasuredPair[]) =>
						list.reduce<Shelf>((now, one) => learned(now, one, 'take-over')!, shelf)
					const [forth, back] = [take(pairs), take(pairs.toReversed())]
					expect(first(back).insideLengthMm).toBe(first(forth).insideLengthMm)
					expect(differingIn(back.models[0]!)).toEqual(differingIn(forth.models[0]!))
				},
			),
		)
	})
})
