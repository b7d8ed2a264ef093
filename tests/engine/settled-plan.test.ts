/** What an answer does to the plan, and the plan of a record that has no prescription. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment, Question } from '../../shared/engine/findings/assessment.ts'
import {
	answerTo,
	asProposed,
	changedTo,
	isSettled,
	leftUnchanged,
	openQuestions,
	overtakenAnswer,
	setAside,
	withAnswer,
	withoutAnswer,
} from '../../shared/engine/prescription/answers.ts'
import { settledAlone, settledPlan } from '../../shared/engine/prescription/settled.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import { json, read } from '../demo.ts'

const parsed = parseShelf(json('shelf.json'))
const shelf = parsed.ok ? parsed.value : undefined
const growing = assess(read(json('visit-adolescent.json')), [], undefined, shelf)
const asked = (assessment: Assessment, id: string): Question => {
	const question = assessment.prescription.questions.find((one) => one.id === id)
	if (!question) throw new Error(`${id} is not asked`)
	return question
}
const answered = (...answers: NonNullable<Decisions['answers']>): Decisions =>
	answers.reduce(withAnswer, noDecisions)

describe('an answer', () => {
	const size = asked(growing, 'size')
	it('settles the proposal that it was about and no other', () => {
		const decisions = answered(asProposed(size))
		expect(isSettled(decisions, size)).toBe(true)
		expect(answerTo(decisions, size)?.read).toEqual(size.because)
		const other = { ...size, of: 'f'.repeat(64) }
		expect(isSettled(decisions, other)).toBe(false)
		expect(answerTo(decisions, other)).toBeUndefined()
		expect(overtakenAnswer(decisions, other)).toEqual(answerTo(decisions, size))
		expect(overtakenAnswer(decisions, size)).toBeUndefined()
	})
	it('needs fields of its own question, a reason, or that nothing changed', () => {
		const settledBy = (answer: NonNullable<Decisions['answers']>[number], question = size) =>
			isSettled(answered(answer), question)
		const band = { min: 258, target: 260, max: 262 }
		expect(settledBy(changedTo(size, { insideLengthMm: band }))).toBe(true)
		expect(settledBy(changedTo(size, { buy: true }))).toBe(false)
		expect(settledBy(changedTo(size, {}))).toBe(false)
		expect(settledBy(setAside(size, 'no foot measured'))).toBe(true)
		expect(settledBy(setAside(size, ' '))).toBe(false)
		expect(settledBy(leftUnchanged(size))).toBe(false)
		const same = { ...size, unchanged: true }
		expect(settledBy(leftUnchanged(same), same)).toBe(true)
		const gate = { ...asked(growing, 'gate'), unchanged: true }
		expect(settledBy(leftUnchanged(gate), gate)).toBe(false)
	})
	it('is replaced by the next one and can be taken back', () => {
		const decisions = answered(asProposed(size), setAside(size, 'to be measured again'))
		expect(decisions.answers).toHaveLength(1)
		expect(answerTo(decisions, size)?.choice).toBe('set-aside')
		expect(withoutAnswer(decisions, 'size')).toEqual(noDecisions)
	})
	it('is not asked where its subject is held', () => {
		const questions = [{ ...size, held: true }]
		expect(openQuestions(noDecisions, { questions })).toEqual([])
	})
})
describe('the settled plan', () => {
	const planWith = (...answers: NonNullable<Decisions['answers']>) =>
		settledPlan(growing, answered(...answers))
	const proposed = planWith()
	it('holds every proposal while nothing is answered, and says so', () => {
		expect(proposed.open).toEqual(growing.prescription.questions.map(({ id }) => id))
		expect(proposed.pairs).toEqual(growing.prescription.pairs)
	})
	it('moves the size, what rests on it, and trainers by as much', () => {
		const was = proposed.size.boots!
		const to = { min: was.min + 40, target: was.target + 40, max: was.max + 40 }
		const plan = planWith(changedTo(asked(growing, 'size'), { insideLengthMm: to }))
		expect(plan.size.boots).toEqual(to)
		expect(plan.size.trainers?.min).toBeCloseTo(proposed.size.trainers!.min + 40)
		expect(plan.pairs.find(({ role }) => role === 'match')?.insideLengthMm).toEqual(to)
		// no model of the shelf is four sizes longer than the one proposed
		expect(proposed.pairs.flatMap((pair) => pair.shelf).length).toBeGreaterThan(0)
		expect(plan.pairs.flatMap((pair) => pair.shelf)).toEqual([])
	})
	it('puts another raise into one pair, with all that stands under the heel', () => {
		const pair = proposed.raise.pairs.find(({ left }) => left.addMm > 0)!
		const plan = planWith(
			changedTo(asked(growing, 'raise'), { raise: [{ pair: pair.pair, left: 3, right: 0 }] }),
		)
		const raised = plan.raise.pairs.find((one) => one.pair === pair.pair)!
		expect(raised.left.addMm).toBe(3)
		expect(raised.left.addedUnderHeelMm).toBeCloseTo(
			pair.left.addedUnderHeelMm - pair.left.addMm + 3,
		)
		expect(raised.right).toMatchObject({ addMm: 0, madeBy: 'none' })
		const others = ({ pair: id }: { pair: string }) => id !== pair.pair
		expect(plan.raise.pairs.filter(others)).toEqual(proposed.raise.pairs.filter(others))
	})
	it('takes out what is set aside, with its priority', () => {
		const plan = planWith(
			setAside(asked(growing, 'raise'), 'no pain now'),
			setAside(asked(growing, 'insert'), 'next visit'),
			setAside(asked(growing, 'pair.match'), 'season over'),
		)
		expect(plan.setAside).toEqual(['raise', 'pair.match', 'insert'])
		expect(plan.raise.pairs.every(({ left, right }) => left.addMm + right.addMm === 0)).toBe(true)
		expect(plan.raise.steps).toEqual([])
		expect(plan.insert.left).toMatchObject({ state: 'not-needed', elements: [] })
		expect(plan.pairs.some(({ role }) => role === 'match')).toBe(false)
		const codes = plan.priorities.map(({ code }) => code)
		expect(proposed.priorities.map(({ code }) => code)).toContain('priority.raise')
		expect(codes).not.toContain('priority.raise')
		expect(codes).not.toContain('priority.insert')
		expect(plan.priorities.map(({ rank }) => rank)).toEqual(codes.map((_, index) => index + 1))
	})
	it('keeps the changes that were kept, another verdict and another day', () => {
		const [first, ...others] = growing.prescription.changes
		const plan = planWith(
			changedTo(asked(growing, 'changes'), { keep: others }),
			changedTo(asked(growing, 'owned'), { verdicts: [{ id: 'p1', verdict: 'training-only' }] }),
			changedTo(asked(growing, 'review'), { reviewDate: '2027-05-01' }),
		)
		expect(plan.changes).not.toContain(first)
		expect(plan.changes).toEqual(others)
		const pair = plan.owned.find(({ id }) => id === 'p1')
		expect(pair?.verdict).toBe('training-only')
		expect(pair).not.toHaveProperty('by')
		expect(plan.review?.date).toBe('2027-05-01')
		expect(plan.priorities.map(({ code }) => code)).not.toContain('priority.replace')
	})
	it('gives a role its own sole, features and models, or no purchase', () => {
		const plan = planWith(
			changedTo(asked(growing, 'pair.match'), {
				sole: 'turf',
				seek: ['wide-fitting'],
				avoid: [],
				models: [],
				buy: false,
			}),
		)
		expect(plan.pairs.find(({ id }) => id === 'match')).toMatchObject({
			sole: 'turf',
			seek: ['wide-fitting'],
			avoid: [],
			shelf: [],
			means: 'with-what-you-have',
		})
		const training = ({ role }: { role: string }) => role === 'training'
		expect(plan.pairs.find(training)).toEqual(proposed.pairs.find(training))
	})
	it('leaves out elements of the insert that were dropped one by one', () => {
		const [dropped, ...left] = proposed.insert.left.elements
		const plan = settledPlan(growing, {
			...noDecisions,
			insert: { left: [{ element: dropped!, choice: 'drop', why: 'no room' }] },
		})
		expect(plan.insert.left.elements).toEqual(left)
		expect(plan.insert.right).toEqual(proposed.insert.right)
	})
	it('alone holds nothing that is open but the warning not to wear a pair', () => {
		const unsafe = { ...growing.prescription.owned[0]!, verdict: 'stop-wearing' as const }
		const alone = settledAlone({ ...proposed, owned: [unsafe] })
		expect(alone).toMatchObject({ pairs: [], changes: [], lacing: [], size: {} })
		expect(alone.owned).toEqual([unsafe])
		expect(alone).not.toHaveProperty('review')
	})
})
describe('a record of before', () => {
	const { prescription: _, ...before } = growing
	it('has a plan of what was proposed and decided', () => {
		const plan = settledPlan(before, {
			...noDecisions,
			heelRaiseMm: { left: 4, right: 0 },
			reviewDate: '2027-04-01',
			lines: [
				{ findingId: `seek.${before.footwear.target.seek[0]!.feature}`, choice: 'drop' },
				{ findingId: 'model.m1', choice: 'accept', says: 'M1' },
			],
		})
		expect(plan.questions).toEqual([])
		expect(plan.open).toEqual([])
		expect(plan.raise.pairs[0]).toMatchObject({ left: { addMm: 4 }, right: { addMm: 0 } })
		expect(plan.review).toEqual({ date: '2027-04-01', because: [] })
		expect(plan.pairs[0]?.shelf).toEqual(['m1'])
		expect(plan.pairs[0]?.seek).not.toContain(before.footwear.target.seek[0]!.feature)
		expect(plan.owned.map(({ id }) => id)).toEqual(
			before.footwear.current.filter(({ verdict }) => verdict !== 'unknown').map(({ id }) => id),
		)
	})
	it('holds the limb that waited, until what was done is recorded', () => {
		const waiting = {
			...before,
			screening: {
				...before.screening,
				blockedSides: ['left' as const],
				blockedBy: { left: ['screening.nightPain'], right: [] },
			},
			insert: {
				...before.insert,
				left: { state: 'stopped' as const, stoppedBy: [], elements: [] },
			},
		}
		const plan = settledPlan(waiting, noDecisions)
		expect(plan.insert.left.state).toBe('held')
		expect(plan.gate.left.holds.map(({ what }) => what)).toEqual(['insert'])
		expect(plan.gate.person.holds.map(({ what }) => what)).toEqual(['season'])
		const done = settledPlan(waiting, {
			...noDecisions,
			screeningDone: [{ side: 'left', done: 'Seen.', items: ['screening.nightPain'] }],
		})
		expect(done.gate.left.holds).toEqual([])
		expect(done.gate.person.holds).toEqual([])
	})
})
