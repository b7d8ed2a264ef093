/** Decisions hold for a content, not for a wording: lines, marks, elements, and what blocks signing. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { FootwearWork } from '../../shared/engine/findings/assessment.ts'
import { elementAsDecided, withDecisions } from '../../shared/engine/insert/decided.ts'
import { changedTo } from '../../shared/engine/prescription/answers.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import {
	isOvertakenMark,
	type Marked,
	modelMark,
	overtakenMarks,
	workKey,
	workMark,
} from '../../shared/engine/report/marked.ts'
import { signingBlocks } from '../../shared/engine/report/signing.ts'
import {
	aboutOf,
	type DecidedOn,
	type Decision,
	decisionsSchema,
	hasOwnWords,
	isAboutOther,
	noDecisions,
	overtakenLine,
	standingLine,
} from '../../shared/engine/visit/decisions.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { agreed } from '../agreed.ts'
import { flat, has, visitWith } from '../published/known-insert.ts'

const stated: DecidedOn = {
	says: 'The left ankle bends less than the cut-off.',
	code: 'ankle.restricted',
	params: { side: 'left', limitedBy: 'gastrocnemius' },
}
const reworded: DecidedOn = { ...stated, says: 'The left ankle is stiff.' }
const worse: DecidedOn = { ...stated, params: { ...stated.params, limitedBy: 'anterior-block' } }
const id = 'ankle.restricted.left'
const withLine = (line: Partial<Decision>) =>
	decisionsSchema.parse({
		...noDecisions,
		lines: [{ findingId: id, choice: 'accept', ...line }],
	})

describe('a line about a finding', () => {
	it('stands while the content is the same, however it is worded', () => {
		const decisions = withLine(aboutOf(stated))
		expect(standingLine(decisions, id, stated)).toBeDefined()
		expect(standingLine(decisions, id, reworded)).toBeDefined()
		expect(overtakenLine(decisions, id, reworded)).toBeUndefined()
	})
	it('is asked again where the content is another, even in the same words', () => {
		const decisions = withLine(aboutOf(stated))
		expect(worse.says).toBe(stated.says)
		expect(standingLine(decisions, id, worse)).toBeUndefined()
		expect(standingLine(decisions, id, worse)).toBeUndefined()
	})
	it('of before contents were kept stands on its words; with neither it stands', () => {
		const before = withLine({ about: stated.says })
		expect(standingLine(before, id, stated)).toBeDefined()
		expect(standingLine(before, id, reworded)).toBeUndefined()
		expect(standingLine(withLine({}), id, worse)).toBeDefined()
	})
	it('keeps what was typed when it is asked again', () => {
		const typed = { choice: 'change' as const, says: 'Calf work first.', why: 'pain' }
		const before = withLine({ ...typed, about: stated.says })
		expect(overtakenLine(before, id, reworded)).toMatchObject(typed)
	})
	it('about what states no code is compared by its words', () => {
		const { code: _code, params: _params, ...plain } = stated
		expect(isAboutOther(aboutOf(stated), plain)).toBe(false)
		expect(isAboutOther(aboutOf(stated), { says: reworded.says })).toBe(true)
	})
	it('that changes has words of its own once they are not the suggestion again', () => {
		const own = (says?: string) => hasOwnWords({ about: stated.says, ...(says ? { says } : {}) })
		expect([undefined, ' ', stated.says, `${stated.says} `, 'Other.'].map(own)).toEqual([
			false,
			false,
			false,
			false,
			true,
		])
	})
	it('holds exactly while code and parameters do, whatever the words and the order of keys', () =>
		fc.assert(
			fc.property(
				fc.dictionary(fc.string(), fc.oneof(fc.integer(), fc.string(), fc.boolean())),
				fc.string({ minLength: 1 }),
				fc.string({ minLength: 1 }),
				(params, says, other) => {
					const line = aboutOf({ code: 'a.b', params, says })
					const turned = Object.fromEntries(Object.entries(params).reverse())
					expect(isAboutOther(line, { code: 'a.b', params: turned, says: other })).toBe(false)
					expect(isAboutOther(line, { code: 'a.c', params, says })).toBe(true)
					expect(isAboutOther(line, { code: 'a.b', params: { ...params, '+': 1 }, says })).toBe(
						!('+' in params) || params['+'] !== 1,
					)
				},
			),
		))
})

describe('a mark', () => {
	const model = {
		name: 'Model A',
		size: { system: 'uk', label: 7, insideLengthMm: 270, ballWidthMm: 98 },
	}
	const work: FootwearWork & { code: string; params: object } = {
		id: 'wedge',
		name: 'Heel wedge',
		side: 'left',
		says: 'A wedge of 4 mm.',
		limits: '',
		because: [],
		cautions: [],
		basis: { rule: 'r', source: 's', strength: 'practice' },
		code: 'work.wedge',
		params: { heightMm: 4 },
	}
	it('on a model is overtaken by another size, not by its other measures', () => {
		const line = modelMark(model)
		expect(isOvertakenMark(line, modelMark({ ...model, size: { ...model.size, label: 8 } }))).toBe(
			true,
		)
		const narrower = { ...model, size: { ...model.size, ballWidthMm: 97 } }
		expect(isOvertakenMark(line, modelMark(narrower))).toBe(false)
	})
	it('on a change is overtaken by another amount, not by other words', () => {
		const line = workMark(work as FootwearWork)
		const now = (change: object) => workMark({ ...work, ...change } as FootwearWork)
		expect(isOvertakenMark(line, now({ says: 'Put 4 mm under the heel.', name: 'Wedge' }))).toBe(
			false,
		)
		expect(isOvertakenMark(line, now({ params: { heightMm: 5 } }))).toBe(true)
	})
	it('of before contents were kept is compared by its words', () => {
		const { of: _of, ...line } = workMark(work as FootwearWork)
		expect(isOvertakenMark(line, workMark(work as FootwearWork))).toBe(false)
		expect(isOvertakenMark(line, { ...workMark(work as FootwearWork), says: 'Other.' })).toBe(true)
	})
	it('of what is not asked for any more stays', () => {
		const visit = visitWith({})
		const lines: (Decision & Marked)[] = [
			{ findingId: `work.${workKey(work)}`, choice: 'accept', ...workMark(work as FootwearWork) },
		]
		expect(overtakenMarks({ ...noDecisions, lines }, assess(visit))).toEqual([])
	})
})

describe('an element of the insert', () => {
	const painful = visitWith({
		posture: { left: { fpi6: flat } },
		conditions: [has('flexible-flatfoot-pain')],
		body: { massKg: 70 },
		feet: { left: { heelWidthMm: 60 } },
	})
	const { elements } = assess(painful).insert.left
	const post = elements.find(({ element }) => element === 'rearfoot-post-medial')!
	const decide = (decision: object, now = post) =>
		withDecisions(
			[now],
			decisionsSchema.parse({
				...noDecisions,
				insert: { left: [{ element: post.element, ...decision }] },
			}).insert!.left!,
			openProtocol(),
		)
	const about = aboutOf(elementAsDecided(post))
	const higher = { ...post, value: 6 }
	it('is accepted by what it is; where that is another it is open again', () => {
		expect(decide({ choice: 'accept', ...about })[0]?.decision?.choice).toBe('accept')
		const renamed = { ...about, about: 'a post on the inner side, 4 degrees' }
		expect(decide({ choice: 'accept', ...renamed })[0]?.decision?.choice).toBe('accept')
		expect(decide({ choice: 'accept', ...about }, higher)[0]).toEqual({ element: higher })
	})
	it('changed or dropped stays so, and is named where something else is proposed now', () => {
		const changed = { choice: 'change', value: 2, why: 'knee', ...about }
		expect(decide(changed)[0]).not.toHaveProperty('overtaken')
		expect(decide(changed, higher)[0]).toMatchObject({
			element: { value: 2 },
			proposed: { value: 6 },
			overtaken: true,
		})
		const dropped = { element: post.element, choice: 'drop', why: 'no room', ...about }
		expect(decide(dropped, higher)).toEqual([])
		const codes = (of: object) =>
			signingBlocks(
				{
					visit: painful,
					decisions: decisionsSchema.parse({
						...settledAsProposed(assess(painful)),
						...agreed,
						insert: { left: [{ ...dropped, ...of }] },
					}),
					raw: {},
				},
				assess(painful),
				openProtocol(),
			).map(({ code, params }) => [code, params])
		expect(codes({})).toEqual([])
		expect(codes(aboutOf(elementAsDecided(higher)))).toEqual([
			['signing.overtaken-elements', { elements: 1 }],
		])
	})
	it('with another angle stands as high as that angle asks for', () => {
		expect(post.params).toEqual({ side: 'left', heelWidthMm: 60, heightMm: 4.2 })
		const [lower] = decide({ choice: 'change', value: 2, why: 'knee' })
		expect(lower?.element.params).toEqual({ side: 'left', heelWidthMm: 60, heightMm: 2.1 })
		// Telfer 2013, about 0.2 degrees of eversion for one of post
		expect(lower?.element.cautioned).toContainEqual(
			state('insert.caution-eversion', { changeDeg: -0.4 }),
		)
		// an angle that is no post any more has no height
		const [steep] = decide({ choice: 'change', value: 60, why: 'slip' })
		expect(steep?.element.params).toEqual({ side: 'left' })
		const [own] = decide({ choice: 'change', value: 2, says: 'Soft.', why: 'knee' })
		expect(own?.element).toMatchObject({ says: 'Soft.' })
		expect(own?.element).not.toHaveProperty('code')
	})
})

describe('what keeps a visit from being signed', () => {
	const codesOf = (visit: object, decisions: object, raw: Record<string, string> = {}) => {
		const given = visitSchema.parse({ ...visitWith({}), ...visit })
		const assessment = assess(given)
		return signingBlocks(
			{
				visit: given,
				decisions: decisionsSchema.parse({ ...settledAsProposed(assessment), ...decisions }),
				raw,
			},
			assessment,
			openProtocol(),
		).map(({ path, code, params }) => [path, code, params])
	}
	it('is told by code, place and parameters', () => {
		const limitMm = openProtocol().value('ankle.raiseStopMm')
		expect(
			codesOf(
				{},
				{
					lines: [
						{ findingId: 'a.b.left', choice: 'change', says: ' ' },
						{ findingId: 'own.2', choice: 'add' },
					],
					heelRaiseMm: { left: limitMm + 1, right: 0 },
					agreement: { ...agreed.agreement, explainedTo: {} },
				},
				{ 'body.massKg': '4x' },
			),
		).toEqual([
			['body.massKg', 'signing.not-yet-values', { fields: 1 }],
			['decisions.lines', 'signing.changed-without-words', { finding: 'a.b.left' }],
			['decisions.lines', 'signing.own-line-empty', { line: '2' }],
			['decisions.heelRaiseWhy', 'signing.raise-without-reason', { limitMm }],
			['decisions.agreement.explainedTo', 'signing.told-nobody', {}],
		])
		expect(codesOf({ screening: { nightPain: true } }, { ...agreed, answers: [] })).toContainEqual([
			'decisions.answers',
			'signing.open-questions',
			{ questions: expect.arrayContaining(['gate']) },
		])
		const nothing = { visit: visitWith({}), decisions: noDecisions, raw: {} }
		expect(signingBlocks(nothing, undefined, openProtocol())).toEqual([
			expect.objectContaining({ path: 'visit', code: 'signing.not-assessed' }),
		])
	})
	it('is no high raise that was proposed, but one set above the proposal without a reason', () => {
		const trainers = { id: 'p1', sole: 'road', heelToForefootOffsetMm: 8 }
		const visit = {
			conditions: [{ condition: 'achilles-midportion', side: 'left', status: 'current' }],
			footwear: [trainers],
		}
		const given = visitSchema.parse({ ...visitWith({}), ...visit })
		const { raise, questions } = assess(given).prescription
		const limitMm = openProtocol().value('ankle.raiseStopMm')
		// the dose of the trial, in trainers
		const [pair] = raise.pairs
		expect(pair?.left.addMm).toBeGreaterThan(limitMm)
		expect(codesOf(visit, { ...agreed })).toEqual([])
		const question = questions.find((one) => one.id === 'raise')!
		const raised = (mm: number, why?: string) => {
			const fields = { raise: [{ pair: 'p1', left: mm, right: mm }] }
			const { answers = [] } = settledAsProposed(assess(given))
			const others = answers.filter((one) => one.question !== 'raise')
			return codesOf(visit, {
				...agreed,
				answers: [...others, changedTo(question, fields, why)],
			}).map(([, code]) => code)
		}
		expect(raised(pair!.left.addMm + 1)).toEqual(['signing.raise-without-reason'])
		expect(raised(pair!.left.addMm + 1, 'long tried')).toEqual([])
		expect(raised(limitMm + 1)).toEqual([])
	})
})
