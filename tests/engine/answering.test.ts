/** What answering a question on Decide does to a draft: one question, nothing typed lost. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
	besideQuestion,
	changeFields,
	choiceOfKey,
	choicesFor,
	countSettled,
	findingsElsewhere,
	findingsIn,
	letStand,
	nextOpen,
	putAside,
	sayWhy,
	settle,
	stateOf,
	takeBack,
	typedText,
	typeFields,
} from '../../renderer/screens/assessment/decide/answering.ts'
import { rawWords } from '../../renderer/screens/assessment/decide/decisions.ts'
import { heldBy, heldLine } from '../../renderer/screens/assessment/decide/heldWords.ts'
import {
	keptElements,
	withElement,
} from '../../renderer/screens/assessment/decide/insertDecisions.ts'
import { firmnessWords } from '../../renderer/screens/assessment/decide/proposalWords.ts'
import {
	proposedFields,
	readBand,
	readRaises,
} from '../../renderer/screens/assessment/decide/proposedFields.ts'
import {
	kindOf,
	questionOfPath,
	questionPath,
} from '../../renderer/screens/assessment/decide/questionTitles.ts'
import type { DraftContent } from '../../shared/contract.ts'
import { differences } from '../../shared/desk/records/amendment.ts'
import { toldDifferences } from '../../shared/desk/records/told.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Gate, Question } from '../../shared/engine/findings/assessment.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import { decisionsSchema, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'

const visit = visitSchema.parse(
	JSON.parse(readFileSync(new URL('../../assets/demo/visit-adult.json', import.meta.url), 'utf8')),
)
const assessment = assess(visit)
const { questions, gate } = assessment.prescription
const draft: DraftContent = { visit, raw: {}, decisions: noDecisions }
const question = (id: string): Question =>
	need(
		questions.find((one) => one.id === id),
		`the question ${id}`,
	)
const size = question('size')
const band = { min: 250, target: 252, max: 254 }
const statesOf = (now: DraftContent) => questions.map((one) => stateOf(now, one))
const valid = (now: DraftContent) => decisionsSchema.safeParse(now.decisions).error?.issues ?? []

describe('one answer settles one question', () => {
	it.each(questions.map((one) => [one.id, one] as const))('%s', (_id, one) => {
		const before = statesOf(draft)
		const others = (now: DraftContent) =>
			statesOf(now).filter((_state, at) => questions[at]?.id !== one.id)
		const left = before.filter((_state, at) => questions[at]?.id !== one.id)
		const asProposed = settle(draft, one, 'as-proposed')
		const aside = putAside(draft, one, 'the player does not want it')
		for (const now of [asProposed, aside]) {
			expect(stateOf(now, one)).toBe('settled')
			expect(others(now)).toEqual(left)
			expect(valid(now)).toEqual([])
		}
		expect(asProposed.decisions.answers).toEqual([
			{ question: one.id, choice: 'as-proposed', of: one.of, read: one.because },
		])
		expect(stateOf(takeBack(asProposed, one), one)).toBe('open')
	})
	it('leaves what is held alone', () => {
		const held = { ...size, held: true }
		expect(settle(draft, held, 'as-proposed')).toBe(draft)
		expect(stateOf(draft, held)).toBe('held')
		expect(choicesFor(held, gate)).toEqual([])
	})
	it('asks again when something else is proposed, and lets the answer stand when told to', () => {
		const settled = changeFields(draft, size, { insideLengthMm: band })
		const other = { ...size, of: '0'.repeat(64) }
		expect(stateOf(settled, other)).toBe('overtaken')
		expect(stateOf(letStand(settled, other), other)).toBe('settled')
	})
	it('needs a reason to set a question aside', () => {
		expect(stateOf(putAside(draft, size, '  '), size)).toBe('open')
		const before = settle(draft, size, 'as-proposed')
		expect(stateOf(putAside(before, size, ''), size)).toBe('open')
	})
})

describe('what may be answered', () => {
	const unknown: Gate = { ...openGate, left: { ...openGate.left, state: 'not-established' } }
	it('neither changes the gate nor leaves it as it was', () => {
		const asked = { ...question('gate'), unchanged: true }
		expect(choicesFor(asked, openGate)).toEqual(['as-proposed'])
		expect(choicesFor(asked, unknown)).toEqual(['set-aside'])
	})
	it('offers unchanged only where nothing changed', () => {
		expect(choicesFor({ ...size, unchanged: true }, gate)).toContain('unchanged')
		expect(choicesFor({ ...size, unchanged: false }, gate)).not.toContain('unchanged')
	})
	it('takes a key for what may be answered, and no other', () => {
		expect(['a', 'C', 's', 'u', 'x'].map((key) => choiceOfKey(key, size, gate))).toEqual([
			'as-proposed',
			'changed',
			'set-aside',
			undefined,
			undefined,
		])
		expect(choiceOfKey('a', question('gate'), unknown)).toBeUndefined()
	})
})

describe('fields', () => {
	it('begin with what is proposed', () => {
		expect(proposedFields(assessment, size).insideLengthMm).toEqual(
			assessment.sizing.insideLengthMm,
		)
		expect(proposedFields(assessment, question('review')).reviewDate).toBe(
			assessment.prescription.review?.date,
		)
	})
	it('reach the plan, with the reason', () => {
		const changed = sayWhy(
			changeFields(draft, size, { insideLengthMm: band }),
			size,
			'likes it snug',
		)
		expect(settledPlan(assessment, changed.decisions).size.boots).toEqual(band)
		expect(changed.decisions.answers?.[0]).toMatchObject({
			choice: 'changed',
			why: 'likes it snug',
		})
		expect(valid(changed)).toEqual([])
	})
	it('keep what is typed while it is no value, hold the signature, and settle once it is one', () => {
		const typed = { min: '25x', target: '252', max: '254' }
		const now = typeFields(draft, size, typed, undefined)
		expect(typedText(now, size, 'min', 1)).toBe('25x')
		expect(stateOf(now, size)).toBe('open')
		expect(
			signingBlocks(now, assessment, openProtocol()).some(
				({ code }) => code === 'signing.not-yet-values',
			),
		).toBe(true)
		expect(rawWords(questionPath('size', 'min'), '25x')).toBe("Size: '25x'")
		const then = typeFields(now, size, { ...typed, min: '250' }, { insideLengthMm: band })
		expect(then.raw).toEqual({})
		expect(stateOf(then, size)).toBe('settled')
		expect(settle(now, size, 'as-proposed').raw).toEqual({})
	})
	it('say what cannot stand', () => {
		expect(readBand({ min: '260', target: '255', max: '258' }).wrong).toEqual({
			min: 'The shortest is longer than the target.',
		})
		expect(readBand({ min: '250', target: '258', max: '254' }).wrong.max).toContain('shorter')
		expect(readBand({ min: '', target: '1', max: '9999' }).wrong).toEqual({
			min: 'Give a number in mm.',
			target: "'1' is not allowed; give 90 to 420 mm.",
			max: "'9999' is not allowed; give 90 to 420 mm.",
		})
		expect(readBand({ min: '25 cm', target: '252', max: '254' }).insideLengthMm).toEqual(band)
		expect(readRaises(['p1'], { 'p1.left': '5', 'p1.right': '26' })).toEqual({
			wrong: { 'p1.right': "'26' is not allowed; give 0 to 25 mm." },
		})
		expect(readRaises(['p1'], { 'p1.left': '5', 'p1.right': '0' }).raise).toEqual([
			{ pair: 'p1', left: 5, right: 0 },
		])
	})
	it('leave no older figure beside the answer', () => {
		const raise: Question = { ...size, id: 'raise' }
		const older = {
			...draft,
			decisions: {
				...noDecisions,
				heelRaiseMm: { left: 4, right: 4 },
				heelRaiseWhy: 'pain',
				reviewDate: '2027-09-01',
			},
		}
		const now = settle(settle(older, raise, 'as-proposed'), question('review'), 'as-proposed')
		expect(Object.keys(now.decisions).sort()).toEqual(['actions', 'answers', 'lines'])
	})
})

describe('the insert', () => {
	const insert = question('insert')
	const [element = '', other = ''] = assessment.prescription.insert.left.elements
	const dropped = withElement(draft, 'left', element, { element, choice: 'drop', why: 'no room' })
	it('is changed element by element', () => {
		const keep = keptElements(assessment, dropped.decisions)
		expect(keep).not.toContain(`left.${element}`)
		expect(keep).toContain(`left.${other}`)
		const now = changeFields(dropped, insert, { keep })
		expect(stateOf(now, insert)).toBe('settled')
		expect(now.decisions.insert).toEqual(dropped.decisions.insert)
		expect(settledPlan(assessment, now.decisions).insert.left.elements).not.toContain(element)
	})
	it('as proposed leaves no change behind', () => {
		expect(settle(dropped, insert, 'as-proposed').decisions.insert).toBeUndefined()
	})
})

describe('the list', () => {
	it('shows every finding once, in its question or below', () => {
		const shown = [
			...questions.flatMap((one) => findingsIn(one, assessment)),
			...findingsElsewhere(assessment),
		].map(({ id }) => id)
		expect(shown.sort()).toEqual(assessment.findings.map(({ id }) => id).sort())
	})
	it('goes on to the next that is open, and round to the first', () => {
		const ids = questions.map(({ id }) => id)
		expect(nextOpen(draft, questions, '')).toBe(ids[0])
		expect(nextOpen(draft, questions, need(ids.at(-1), 'the last'))).toBe(ids[0])
		const all = questions.reduce((now, one) => settle(now, one, 'as-proposed'), draft)
		expect(nextOpen(all, questions, need(ids[0], 'the first'))).toBeUndefined()
		expect(countSettled(all, questions)).toEqual({ settled: ids.length, asked: ids.length })
		expect(besideQuestion(questions, need(ids[0], 'the first'), 1)).toBe(ids[1])
		expect(besideQuestion(questions, need(ids[0], 'the first'), -1)).toBeUndefined()
	})
	it('finds the question of a path', () => {
		expect(questionOfPath(questionPath('pair.match', 'sole'))).toBe('pair.match')
		expect(questionOfPath(questionPath('raise', 'p1.left'))).toBe('raise')
		expect(questionOfPath('decisions.lines')).toBeUndefined()
		expect([kindOf('pair.everyday'), kindOf('later')]).toEqual(['pair', 'other'])
	})
	it('says together what one sign holds until one thing', () => {
		const hold = {
			rule: 'severe-pain',
			side: 'left',
			until: 'outcome',
			since: '2027-01-20',
		} as const
		const held: Gate = {
			...openGate,
			left: {
				...openGate.left,
				state: 'held',
				holds: [
					{ ...hold, what: 'weight' },
					{ ...hold, what: 'test' },
				],
			},
		}
		expect(heldBy(held)).toMatchObject([
			{
				what: 'weight on the limb and tests under load',
				until: 'what was found is recorded',
				since: '2027-01-20',
			},
		])
		const prescription = { ...assessment.prescription, gate: held }
		expect(heldLine({ ...assessment, prescription }, question('insert'))).toBe('held')
		const limb = { ...held.left, holds: [{ ...hold, what: 'insert' as const }] }
		expect(
			heldLine(
				{ ...assessment, prescription: { ...prescription, gate: { ...held, left: limb } } },
				question('insert'),
			),
		).toMatch(/^held: .+, left; lifted when what was found is recorded$/)
	})
})

it('says how firmly a proposal stands, and what to measure again', () => {
	expect(firmnessWords(undefined)).toBe('')
	expect(firmnessWords({ firmness: 'steady', decidedBy: [] })).toBe('steady within measuring error')
	expect(
		firmnessWords({ firmness: 'near-a-limit', decidedBy: ['feet.right.heelToToeMm'], share: 0.8 }),
	).toBe('near a limit, so that measuring error may change it; measure heel to toe, right again')
})

it('tells a changed answer by its question, and nothing of what was read', () => {
	const before = { decisions: settle(draft, size, 'as-proposed').decisions }
	const other = { ...size, of: '0'.repeat(64), because: [] }
	const again = { decisions: settle(draft, other, 'as-proposed').decisions }
	expect(toldDifferences(differences(before, again))).toEqual([])
	const aside = { decisions: putAside(settle(draft, size, 'as-proposed'), size, 'later').decisions }
	const both = {
		decisions: settle({ ...draft, ...aside }, question('gate'), 'as-proposed').decisions,
	}
	expect(toldDifferences(differences(before, both))).toEqual([
		expect.objectContaining({ before: 'as proposed', after: 'set aside: later' }),
		expect.objectContaining({ after: 'as proposed' }),
	])
})
