/** What is typed on the Flags step stands in the draft until it is recorded or cleared. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { rawWords } from '../../renderer/screens/assessment/decide/decisions.ts'
import {
	blankOutcome,
	outcomesBegun,
	outcomeTyped,
	reasonsBegun,
	reasonTyped,
	withOutcomeTyped,
	withReasonTyped,
} from '../../renderer/screens/assessment/flagsTyped.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { holdables } from '../../shared/engine/visit/holdables.ts'
import { visitOf } from './gate-visit.ts'

const adult = visitOf({})
const draft: DraftContent = {
	visit: adult,
	raw: { 'body.massKg': '70,,' },
	decisions: { lines: [], actions: [] },
}
const sign = { rule: 'screening.fever', side: 'left' } as const
const text = fc.string({ maxLength: 40 })
const typed = fc.record({
	result: fc.constantFrom(null, 'excluded' as const, 'confirmed' as const, 'recovered' as const),
	found: text,
	how: text,
	by: text,
	on: fc.oneof(text, fc.constant(adult.visitDate)),
	lifts: fc.subarray([...holdables]),
	clears: fc.boolean(),
})

describe('an outcome that is begun', () => {
	test('comes back as it was typed, and takes nothing else of the draft', () => {
		fc.assert(
			fc.property(typed, (given) => {
				const kept = withOutcomeTyped(draft, sign, given)
				expect(outcomeTyped(kept, sign)).toEqual(given)
				expect(outcomeTyped(kept, { ...sign, side: 'right' })).toEqual(blankOutcome(draft))
				expect(kept.visit).toBe(draft.visit)
				expect(withOutcomeTyped(kept, sign, blankOutcome(kept))).toEqual(draft)
			}),
		)
	})
	test('is listed by its sign, and named among what keeps the visit from being signed', () => {
		const begun = withOutcomeTyped(draft, sign, { ...blankOutcome(draft), found: 'no fever' })
		expect(outcomesBegun(draft)).toEqual([])
		expect(outcomesBegun(begun)).toEqual([sign])
		const [path = ''] = Object.keys(begun.raw).filter((one) => !(one in draft.raw))
		expect(rawWords(path, 'no fever')).toMatch(
			/^Outcome not recorded yet, on Flags: .+, left, what was found or excluded: 'no fever'$/,
		)
	})
})
test('a reason that is begun comes back, and is gone once it is emptied', () => {
	const begun = withReasonTyped(draft, 'reduced-sensation', 'cast')
	expect(reasonTyped(begun, 'reduced-sensation')).toBe('cast')
	expect(reasonsBegun(begun)).toEqual(['reduced-sensation'])
	expect(rawWords('coreSetAside.reduced-sensation', 'cast')).toBe(
		"Why not asked, on Flags: feeling in the feet: 'cast'",
	)
	expect(withReasonTyped(begun, 'reduced-sensation', '')).toEqual(draft)
})
