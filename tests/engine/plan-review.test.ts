/** When the player is seen again, and what is signed at once behind a stop. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import { asProposed, openQuestions, withAnswer } from '../../shared/engine/prescription/answers.ts'
import { addWorkingDays, reviewOf } from '../../shared/engine/prescription/review.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { agreed } from '../agreed.ts'

describe('the review', () => {
	const foot = { addMm: 0, madeBy: 'none', addedUnderHeelMm: 0 } as const
	const nothing = {
		gate: openGate,
		raise: { aim: { kind: 'none', because: [] }, pairs: [], steps: [] },
		insert: {
			left: { state: 'not-needed', elements: [], pairs: [] },
			right: { state: 'not-needed', elements: [], pairs: [] },
		},
		owned: [],
		growth: undefined,
		findings: [],
		visitDate: '2026-09-04',
	} satisfies Parameters<typeof reviewOf>[0]
	const protocol = openProtocol()
	it('is asked for by nothing in a plan that asks for none', () => {
		expect(reviewOf(nothing, protocol)).toBeUndefined()
	})
	it('is the next working day after a sign of the same day', () => {
		// 4 September 2026 is a Friday
		const gate = { ...openGate, left: { ...openGate.left, action: 'same-day' as const } }
		expect(reviewOf({ ...nothing, gate }, protocol)?.date).toBe('2026-09-07')
		expect(addWorkingDays('2026-09-01', 3)).toBe('2026-09-04')
	})
	it('is the earliest day that any part asks for, and never today', () => {
		const pair = { pair: 'p1', offsetFrom: 'unknown', left: { ...foot, addMm: 5 }, right: foot }
		const raise = {
			...nothing.raise,
			pairs: [{ ...pair, offsetFrom: 'unknown' as const, limits: [] }],
		}
		// six weeks with a raise
		expect(reviewOf({ ...nothing, raise }, protocol)?.date).toBe('2026-10-16')
		const owned = [
			{
				id: 'p1',
				verdict: 'replace' as const,
				by: '2026-08-01',
				because: ['a.b'],
				work: [],
				code: '',
				params: {},
				says: '',
			},
		]
		expect(reviewOf({ ...nothing, raise, owned }, protocol)).toEqual({
			date: '2026-09-05',
			because: ['a.b'],
		})
	})
})
describe('signing behind a stop', () => {
	const visit = visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1998-04-02', sex: 'male' },
		visitDate: '2026-09-01',
		feet: { left: { heelToToeMm: 260 }, right: { heelToToeMm: 261 } },
		screening: { lisfrancSuspected: true, injury: { side: 'left', unableToBearWeightNow: true } },
	})
	const stopped = assess(visit)
	it('asks for the gate and for what was done, and lets the rest wait', () => {
		const open = openQuestions(noDecisions, stopped.prescription).map(({ id }) => id)
		expect(open).toEqual(expect.arrayContaining(['gate', 'size']))
		const blocks = (decisions: Decisions) =>
			signingBlocks({ visit, decisions, raw: {} }, stopped, openProtocol()).map(
				({ code, params }) => [code, params],
			)
		expect(blocks({ ...noDecisions, ...agreed })).toContainEqual([
			'signing.open-questions',
			{ questions: ['gate'] },
		])
		const gate = stopped.prescription.questions.find(({ id }) => id === 'gate')!
		const settled = withAnswer(noDecisions, asProposed(gate))
		// nobody is kept waiting for an answer to a plan that waits itself
		const toldOnly = { agreement: { explainedTo: { player: true } } }
		expect(blocks({ ...settled, ...toldOnly, referralDone: 'Sent to hospital at 09:10.' })).toEqual(
			[],
		)
	})
})
