/**
 * One plan for every visit: some ten questions, each caution read under one of them, nothing held
 * proposed, and every visit can be signed by settling what it asks.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import type { Assessment, Holdable } from '../../shared/engine/findings/assessment.ts'
import { openQuestions, settleAll } from '../../shared/engine/prescription/answers.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { refers, signingBlocks } from '../../shared/engine/report/signing.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { agreed, saidByHand } from '../agreed.ts'
import { json } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

const parsed = parseShelf(json('shelf.json'))
if (!parsed.ok) throw new Error('the demo shelf is not read')
const shelf = parsed.value
const protocol = openProtocol()
const examples = { numRuns: 60 }
const everyVisit = (holds: (assessment: Assessment, visit: Visit) => void) =>
	fc.assert(
		fc.property(wholeVisit, (visit) => holds(assess(visit, [], undefined, shelf), visit)),
		examples,
	)
/** What the clinician does: settles each question, and writes what was done about a referral. */
const decidedBy = (assessment: Assessment) => ({
	...settleAll(noDecisions, assessment.prescription, 'not asked today'),
	...agreed,
	...(refers(assessment) && { referralDone: 'Sent the same day.' }),
})
const idsOf = (things: readonly { id: string }[]) => things.map(({ id }) => id)

describe('the plan of any visit', () => {
	it('names each finding and each question once', () =>
		everyVisit(({ findings, prescription }) => {
			const ids = idsOf(findings)
			expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([])
			const questions = idsOf(prescription.questions)
			expect(new Set(questions).size).toBe(questions.length)
			expect(questions[0]).toBe('gate')
			expect(questions.length).toBeLessThanOrEqual(12)
		}))
	it('has each caution and stop read under one question that is asked', () =>
		everyVisit(({ findings, prescription: { questions } }) => {
			for (const { id, level } of findings) {
				const under = questions.filter(({ because }) => because.includes(id))
				expect(under.length).toBeLessThanOrEqual(1)
				if (level === 'caution' || level === 'stop')
					expect(under.map(({ held }) => held)).toEqual([false])
			}
			const known = new Set(idsOf(findings))
			for (const { because } of questions)
				expect(because.filter((id) => !known.has(id))).toEqual([])
		}))
	it('can be signed once its questions are settled, and not before', () =>
		everyVisit((assessment, visit) => {
			const decisions = decidedBy(assessment)
			expect(openQuestions(decisions, assessment.prescription)).toEqual([])
			const left = signingBlocks({ visit, decisions, raw: {} }, assessment, protocol)
			expect(left.filter(({ code }) => !saidByHand.includes(code))).toEqual([])
			const { answers: _, ...unanswered } = decisions
			expect(
				signingBlocks({ visit, decisions: unanswered, raw: {} }, assessment, protocol).map(
					({ code }) => code,
				),
			).toContain('signing.open-questions')
		}))
	it('proposes nothing that is held', () =>
		everyVisit(({ prescription: { gate, raise, pairs, insert } }) => {
			const raises = raise.pairs.flatMap(({ left, right }) => [left.addMm, right.addMm])
			const proposed: Readonly<Partial<Record<Holdable, unknown[]>>> = {
				raise: raises.filter((mm) => mm > 0),
				purchase: pairs.filter(({ means }) => means === 'buy'),
				shelf: pairs.flatMap(({ shelf: models }) => models),
			}
			for (const [what, found] of Object.entries(proposed))
				if (isHeld(gate, what as Holdable)) expect([what, found]).toEqual([what, []])
			const inserts = bothSides.filter((side) => isHeld(gate, 'insert', side))
			expect(inserts.flatMap((side) => insert[side].elements)).toEqual([])
		}))
	it('asks the player back after the visit', () =>
		everyVisit(({ prescription: { review } }, { visitDate }) => {
			if (review) expect(review.date > visitDate).toBe(true)
		}))
	it('stands as proposed where every question is settled so', () =>
		everyVisit((assessment) => {
			const plan = settledPlan(assessment, decidedBy(assessment))
			const { raise, pairs, owned, insert, changes, lacing, review } = assessment.prescription
			expect(plan).toMatchObject({ raise, pairs, owned, insert, changes, lacing })
			expect(plan.review).toEqual(review)
			expect(plan.open).toEqual([])
		}))
})
describe('a healthy adult without complaint', () => {
	const visit = visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'Ines', familyName: 'Ward', birthDate: '1998-04-02', sex: 'female' },
		visitDate: '2026-09-01',
		play: {
			code: 'association',
			surfaces: ['natural-firm'],
			matchesPerWeek: 1,
			trainingsPerWeek: 2,
		},
		feet: {
			stance: 'standing',
			left: { heelToToeMm: [246, 246], heelToBallMm: 180, ballWidthMm: 93 },
			right: { heelToToeMm: [247, 247], heelToBallMm: 181, ballWidthMm: 93 },
		},
		ankles: {
			left: { lungeCm: [11, 11.1, 11.2], kneeStraightDeg: 12, kneeBentDeg: 24 },
			right: { lungeCm: [11, 11.2, 11.1], kneeStraightDeg: 12, kneeBentDeg: 24 },
		},
	})
	it('is asked at most five questions', () => {
		const { prescription } = assess(visit, [], undefined, shelf)
		expect(prescription.questions.length).toBeLessThanOrEqual(5)
		expect(idsOf(prescription.questions)).toEqual(expect.arrayContaining(['gate', 'size']))
	})
})
