/**
 * The insert that is worn: what is proposed where it gives trouble, that what is held is proposed
 * nowhere, that left and right mirror, and that a second adjustment knows the first.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { InsertKept, KeptAssessment } from '../../shared/engine/findings/assessment.ts'
import { adjustRows } from '../../shared/engine/insert/follow/adjust.table.ts'
import { changedTo, setAside, withAnswer } from '../../shared/engine/prescription/answers.ts'
import { settledPlan } from '../../shared/engine/prescription/settled.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { insertAfter } from '../../shared/engine/recheck/insert-worn.ts'
import { adjustmentsOf } from '../../shared/engine/report/adjustments-of.ts'
import { kinds, unnamedClinic } from '../../shared/engine/report/kinds.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { InsertWorn } from '../../shared/engine/visit/recorded/insert-worn.ts'
import { bothSides } from '../../shared/engine/visit/sides.ts'
import { insertPlaces } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { elementNames } from '../../shared/engine/words/en/insert-names.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { swapVisit } from './mirror.ts'

const protocol = openProtocol()
const asked = { nightPain: false, fever: false, reducedSensation: false }
const visitOf = (insertWorn: InsertWorn | undefined, more: object = {}): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1995-01-01', sex: 'female' },
		visitDate: '2027-03-01',
		conditions: [{ condition: 'plantar-heel-pain', side: 'both', status: 'current', painWorst: 5 }],
		screening: asked,
		...(insertWorn && { insertWorn }),
		...more,
	})
const keptOf = (visit: Visit): InsertKept | undefined => assess(visit).prescription.insertKept
const worn = (side: InsertWorn['left'], more: Partial<InsertWorn> = {}): InsertWorn => ({
	orderedOn: '2027-01-10',
	stillWorn: true,
	left: side,
	...more,
})
const elements = (...names: string[]) => names.map((element) => ({ element, value: 4, unit: 'mm' }))
const places = fc.subarray([...insertPlaces])
const sideOf = fc.record({
	elements: fc
		.subarray(Object.keys(elementNames))
		.map((names) => names.map((element) => ({ element, value: 3 }))),
	places,
})
const worns: fc.Arbitrary<InsertWorn> = fc.record({
	orderedOn: fc.constant('2027-01-10'),
	stillWorn: fc.constant(true),
	left: sideOf,
	right: sideOf,
})
const inOrder = (kept: InsertKept | undefined) =>
	(kept?.lines ?? []).map((line) => JSON.stringify(line, Object.keys(line).toSorted())).toSorted()

describe('what is proposed', () => {
	it('one change for each place, in what the insert has, its amount a row of the protocol', () => {
		const kept = keptOf(
			visitOf(worn({ elements: elements('shell'), places: ['heel', 'inner-arch'] })),
		)
		expect(kept?.lines).toEqual([
			{ side: 'left', place: 'heel', act: 'add', element: 'heel-cushion', mm: 3 },
			{ side: 'left', place: 'inner-arch', act: 'grind', element: 'shell', mm: 1 },
		])
	})
	it('adds nothing to an insert that is too thick for the boot', () => {
		const visit = visitOf(worn({ elements: elements('shell'), places: ['heel', 'too-thick'] }))
		expect(keptOf(visit)?.lines.map(({ act }) => act)).toEqual(['maker-judges', 'grind'])
	})
	it('nothing where none is told, and the insert is kept', () => {
		expect(keptOf(visitOf(worn({ places: ['none'] })))?.lines).toEqual([])
	})
	it('nothing is kept where nobody said that it is worn, or it is worn no more', () => {
		expect(keptOf(visitOf(undefined))).toBeUndefined()
		expect(keptOf(visitOf({ orderedOn: '2027-01-10' }))).toBeUndefined()
		expect(keptOf(visitOf(worn({ places: ['heel'] }, { stillWorn: false })))).toBeUndefined()
	})
	it('says that findings still call for what is lowered', () => {
		const visit = visitOf(worn({ elements: elements('heel-aperture'), places: ['heel'] }))
		expect(keptOf(visit)?.lines[0]).toMatchObject({ act: 'widen', element: 'heel-aperture' })
		const flat = visitOf(
			worn({ elements: elements('rearfoot-post-medial'), places: ['inner-arch'] }),
			{
				conditions: [{ condition: 'flexible-flatfoot-pain', side: 'left', status: 'current' }],
				posture: { left: { fpi6: [2, 2, 2, 1, 1, 1] } },
			},
		)
		const [post] = keptOf(flat)?.proposed ?? []
		expect(post?.line).toMatchObject({ act: 'take-off', deg: 1 })
		expect(post?.against.map(({ code }) => code)).toContain('insert.adjust-still-called-for')
	})
	it('every place has a row, and every line words for laboratory and player', () => {
		for (const place of insertPlaces) {
			expect(adjustRows[place].length).toBeGreaterThan(0)
			const [one] = keptOf(visitOf(worn({ places: [place] })))?.proposed ?? []
			if (!one) throw new Error(`nothing is proposed for ${place}`)
			for (const reader of ['laboratory', 'player'] as const)
				expect(spokenTo(reader, one)).toMatch(/^[A-Z].*\.$/)
		}
	})
})
describe('over any insert', () => {
	it('left and right mirror', () => {
		fc.assert(
			fc.property(worns, (insertWorn) => {
				const visit = visitOf(insertWorn)
				const mirrored = inOrder(keptOf(swapVisit(visit))).map((line) =>
					line.replace(/"(left|right)"/, (_, side) => (side === 'left' ? '"right"' : '"left"')),
				)
				expect(mirrored.toSorted()).toEqual(inOrder(keptOf(visit)))
			}),
			{ numRuns: 20 },
		)
	})
	it('nothing on a limb whose insert is held, whatever is answered', () => {
		fc.assert(
			fc.property(worns, places, (insertWorn, also) => {
				const visit = visitOf(insertWorn, {
					screening: { ...asked, reducedSensation: true },
					conditions: [{ condition: 'neuropathy', side: 'left', status: 'current' }],
				})
				const assessment = assess(visit)
				const held = bothSides.filter(
					(side) => assessment.prescription.insert[side].state === 'held',
				)
				expect(held.length).toBeGreaterThan(0)
				const question = assessment.prescription.questions.find(({ id }) => id === 'insert')
				const lines = bothSides.flatMap((side) =>
					also.map((place) => ({ side, place, act: 'grind' as const })),
				)
				const answered = question?.held
					? noDecisions
					: question
						? withAnswer(noDecisions, changedTo(question, { adjust: lines }))
						: noDecisions
				for (const decisions of [noDecisions, answered]) {
					const { insertKept } = settledPlan(assessment as unknown as KeptAssessment, decisions)
					expect((insertKept?.lines ?? []).filter(({ side }) => held.includes(side))).toEqual([])
				}
			}),
			{ numRuns: 20 },
		)
	})
	it('is silenced by a wound or numbness told of the insert itself', () => {
		for (const trouble of ['wound', 'numbness'] as const) {
			const visit = visitOf(worn({ places: ['heel'] }), {
				since: {
					visitDate: '2027-01-10',
					worn: [{ what: 'insert', side: 'left', trouble: [trouble] }],
				},
			})
			expect(
				adjustmentsOf({ assessment: assess(visit) as never, decisions: noDecisions, draft: false }),
			).toBeUndefined()
		}
	})
})
describe('the page for the laboratory', () => {
	const clinic = unnamedClinic
	const input = (visit: Visit, decisions = noDecisions) => ({
		visit,
		assessment: assess(visit) as unknown as KeptAssessment,
		decisions,
		clinic,
		signedAt: undefined,
		draft: true,
		on: visit.visitDate,
	})
	const visit = visitOf(worn({ elements: elements('shell'), places: ['edge'] }))
	it('is of the insert of a day, and says what is done, on which side', () => {
		const { compose, problems } = kinds['insert-order']
		expect(problems(input(visit))).toEqual([])
		const page = JSON.stringify(compose(input(visit)))
		expect(page).toContain('Adjust the insert of 10 January 2027')
		expect(page).toContain('Grind: edge')
		expect(page).not.toContain('true-size')
		// what was never answered is ordered of nobody
		expect(problems({ ...input(visit), draft: false })).toHaveLength(1)
	})
	it('is none where the insert stays as it is, and a whole order where a new one is made', () => {
		const asItIs = visitOf(worn({ places: ['none'] }))
		expect(kinds['insert-order'].problems(input(asItIs)).join()).toContain('goes on being worn')
		const question = assess(visit).prescription.questions.find(({ id }) => id === 'insert')
		if (!question) throw new Error('the insert is not asked about')
		const anew = withAnswer(noDecisions, changedTo(question, { anew: true }))
		expect(kinds['insert-order'].compose(input(visit, anew)).title).toBe('Insert order')
	})
})
describe('from visit to visit', () => {
	const first = visitOf(worn({ elements: elements('medial-skive'), places: ['heel'] }))
	const insertQuestion = (visit: Visit) => {
		const found = assess(visit).prescription.questions.find(({ id }) => id === 'insert')
		if (!found) throw new Error('the insert is not asked about')
		return found
	}
	const signed = (visit: Visit, decisions = noDecisions) => ({
		visit,
		assessment: assess(visit) as unknown as KeptAssessment,
		decisions,
	})
	it('the second adjustment knows the first, and does not propose it again', () => {
		const after = insertAfter(signed(first), protocol)
		expect(after).toMatchObject({
			orderedOn: '2027-01-10',
			adjusted: [
				{ on: '2027-03-01', lines: [{ act: 'take-off', element: 'medial-skive', mm: 1 }] },
			],
			left: { elements: [{ element: 'medial-skive', value: 3 }] },
		})
		expect(after?.left?.places).toBeUndefined()
		if (!after) throw new Error('no insert')
		const second = visitOf(
			{ ...after, stillWorn: true, left: { ...after.left, places: ['heel'] } },
			{ visitDate: '2027-04-01' },
		)
		const [again] = keptOf(second)?.proposed ?? []
		expect(again?.line).toMatchObject({ act: 'add', element: 'heel-cushion' })
		expect(again?.against.map(({ says }) => says).join(' ')).toContain('1 March 2027')
		const later = insertAfter(signed(second), protocol)
		expect(later?.adjusted?.map(({ on }) => on)).toEqual(['2027-03-01', '2027-04-01'])
		expect(later?.left?.elements?.map(({ element }) => element)).toContain('heel-cushion')
	})
	it('what is set aside changes nothing, and what the clinician wrote stands', () => {
		const question = insertQuestion(first)
		const aside = withAnswer(noDecisions, setAside(question, 'to be watched'))
		expect(insertAfter(signed(first, aside), protocol)?.adjusted).toBeUndefined()
		const lines = [{ side: 'right' as const, place: 'edge' as const, act: 'grind' as const }]
		const own = withAnswer(noDecisions, changedTo(question, { adjust: lines }))
		expect(insertAfter(signed(first, own), protocol)?.adjusted?.[0]?.lines).toEqual(lines)
	})
	it('a new one in its place begins anew', () => {
		const anew = withAnswer(noDecisions, changedTo(insertQuestion(first), { anew: true }))
		const after = insertAfter(signed(first, anew), protocol)
		expect(after?.orderedOn).toBe('2027-03-01')
		expect(after?.adjusted).toBeUndefined()
	})
})
