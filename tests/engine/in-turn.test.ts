/** A changed answer turns what is proposed after it: marked, asked again, and in one plan. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import {
	asProposed,
	changedTo,
	setAside,
	withAnswer,
} from '../../shared/engine/prescription/answers.ts'
import type { AskedNow } from '../../shared/engine/prescription/in-turn.ts'
import { namedIn } from '../../shared/engine/prescription/lines.ts'
import { openNow, questionsNow, settledPlan } from '../../shared/engine/prescription/settled.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import type { Answer } from '../../shared/engine/visit/answers.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import { json, read } from '../demo.ts'

const parsed = parseShelf(json('shelf.json'))
const shelf = parsed.ok ? parsed.value : undefined
const oldHand = new URL('./pictures/15-old-hand.json', import.meta.url)
const visit = read(json('visit-adolescent.json'))
const assessment = assess(visit, [], undefined, shelf)
const named = namedIn(visit, assessment)
const { prescription } = assessment
const now = (decisions: Decisions) => questionsNow(assessment, decisions, named)
const at = (id: string, decisions: Decisions): AskedNow =>
	need(
		now(decisions).find((one) => one.id === id),
		id,
	)
const first = (id: string) => at(id, noDecisions)
const answered = (...answers: Answer[]): Decisions => answers.reduce(withAnswer, noDecisions)
const everything = prescription.questions.map((question) => asProposed(question))
const idsOf = (questions: readonly { id: string }[]) => questions.map(({ id }) => id)

describe('what others answer', () => {
	it('turns nothing while all stands as proposed', () => {
		const asked = now(answered(...everything))
		expect(asked.map(({ of, says, changedBy }) => ({ of, says, changedBy }))).toEqual(
			prescription.questions.map(({ of, says }) => ({ of, says, changedBy: [] })),
		)
		expect(openNow(assessment, answered(...everything))).toEqual([])
	})
	it('turns the pairs where another length stands, and asks them again', () => {
		const { min, target, max } = need(assessment.sizing.insideLengthMm, 'a length')
		const longer = { min: min + 3, target: target + 3, max: max + 3 }
		const decisions = withAnswer(
			answered(...everything),
			changedTo(first('size'), { insideLengthMm: longer }),
		)
		const pair = at('pair.match', decisions)
		expect(pair.changedBy).toEqual(['size'])
		expect(pair.of).not.toBe(first('pair.match').of)
		expect(pair.before).toBe(first('pair.match').says)
		expect(pair.prescription.pairs[0]?.insideLengthMm).toEqual(longer)
		expect(idsOf(openNow(assessment, decisions))).toContain('pair.match')
		expect(idsOf(openNow(assessment, decisions))).not.toContain('raise')
		const codes = signingBlocks({ visit, decisions, raw: {} }, assessment, openProtocol())
		expect(codes.map(({ code }) => code)).toContain('signing.open-questions')
		// answered again about what is put now
		const again = now(decisions)
			.filter(({ changedBy }) => changedBy.length > 0)
			.reduce((all, question) => withAnswer(all, asProposed(question)), decisions)
		expect(openNow(assessment, again)).toEqual([])
		expect(settledPlan(assessment, again).pairs[0]?.insideLengthMm).toEqual(longer)
		expect(settledPlan(assessment, again).open).toEqual([])
	})
	it('moves the review where the day of a pair is another one', () => {
		const verdicts = prescription.owned.map(({ id }) => ({ id, verdict: 'keep' as const }))
		const decisions = answered(changedTo(first('owned'), { verdicts }))
		const review = at('review', decisions)
		expect(review.changedBy).toContain('owned')
		const date = need(prescription.review, 'a review').date
		expect(need(review.prescription.review, 'a review left').date > date).toBe(true)
		expect(settledPlan(assessment, decisions).review).toEqual(review.prescription.review)
	})
	it('lets a pair that is kept serve its role, and none that is given up', () => {
		const old = read(JSON.parse(readFileSync(oldHand, 'utf8')))
		const found = assess(old)
		const ask = (decisions: Decisions) => questionsNow(found, decisions, namedIn(old, found))
		const owned = need(
			ask(noDecisions).find(({ id }) => id === 'owned'),
			'owned',
		)
		const verdictsOf = (verdict: 'keep' | 'stop-wearing') =>
			answered(
				changedTo(owned, {
					verdicts: found.prescription.owned.map(({ id }) => ({ id, verdict })),
				}),
			)
		const before = found.prescription.pairs.find(({ id }) => id === 'match')
		expect([before?.means, before?.ownedPair]).toEqual(['buy', undefined])
		const match = ask(verdictsOf('keep')).find(({ id }) => id === 'pair.match')
		expect(match?.params).toMatchObject({ means: 'keep', keep: 'old turf shoes' })
		const plan = settledPlan(found, verdictsOf('stop-wearing'))
		expect(plan.pairs.filter(({ ownedPair }) => ownedPair !== undefined)).toEqual([])
		expect(plan.pairs.map(({ means }) => means)).toEqual(plan.pairs.map(() => 'buy'))
		const ids = new Set(idsOf(found.prescription.owned))
		const raised = plan.raise.pairs.filter(({ pair }) => ids.has(pair))
		expect(raised.map(({ left, right }) => left.addMm + right.addMm)).toEqual(raised.map(() => 0))
	})
	it('takes the day of the raise out of the review with the raise', () => {
		const asked = need(prescription.reviewAsked, 'days asked for')
		expect(asked.map(({ by }) => by)).toContain('raise')
		const without = settledPlan(
			assessment,
			answered(
				setAside(first('raise'), 'not wanted'),
				setAside(first('insert'), 'not wanted'),
				changedTo(first('owned'), {
					verdicts: prescription.owned.map(({ id }) => ({ id, verdict: 'keep' as const })),
				}),
			),
		)
		const left = asked.filter(({ by }) => !['raise', 'insert', 'owned'].includes(by))
		expect(without.review?.date).toBe(left.map(({ date }) => date).sort()[0])
	})
})
