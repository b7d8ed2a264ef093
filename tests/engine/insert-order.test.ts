/** What is told of the insert: to the laboratory what it makes, to the player how it is worn. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { blocksIn } from '../../shared/engine/report/document.ts'
import { insertOrder } from '../../shared/engine/report/insert-order.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import {
	type Decisions,
	decisionsSchema,
	noDecisions,
} from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { spokenTo, state } from '../../shared/engine/words/statement.ts'
import { clinic } from '../demo.ts'
import { flat, has, visitWith } from '../published/known-insert.ts'

const orderOf = (visit: Visit, decisions: Decisions = noDecisions): LwDocument =>
	insertOrder({
		visit,
		assessment: assess(visit),
		decisions,
		clinic,
		signedAt: undefined,
		draft: true,
	})
const textOf = (order: LwDocument) => JSON.stringify(order.blocks)
/** As a table cell ends: without its full stop. */
const bare = (words: string) => words.replace(/\.$/, '')

describe('the insert on the player’s page', () => {
	const visit = visitWith({
		posture: { left: { fpi6: flat, supinationResistance: 'high' } },
		feet: { left: { heelWidthMm: 60, heelToBallMm: 190 } },
		conditions: [has('flexible-flatfoot-pain')],
		body: { massKg: 70 },
	})
	const assessment = assess(visit)
	const { elements } = assessment.insert.left
	const settled = settleAll(noDecisions, assessment.prescription, 'asked elsewhere')
	const page = (decisions: Decisions, draft = false) =>
		playerReport({
			visit,
			assessment,
			decisions,
			clinic,
			signedAt: draft ? undefined : '2027-01-20T12:00:00.000Z',
			draft,
		})
	const listedOn = (decisions: Decisions, draft = false) =>
		blocksIn(page(decisions, draft).blocks).flatMap((block) =>
			block.kind === 'list' ? block.items : [],
		)
	const steps = assessment.insert.wearIn.map((step) => spokenTo('player', step))
	const post = elements.find(({ element }) => element === 'rearfoot-post-medial')!
	it('stands once it is settled: what it is for, how to wear it in, when to take it out', () => {
		expect(steps.length).toBeGreaterThan(5)
		const told = listedOn(settled)
		expect(told).toEqual(expect.arrayContaining(steps))
		expect(told.join()).toContain(spokenTo('player', post))
		expect(told.join()).not.toContain(post.says)
	})
	it('is there as a proposal in a draft alone, and nowhere once it was dropped', () => {
		expect(listedOn(noDecisions, true)).toEqual(expect.arrayContaining(steps))
		expect(listedOn(noDecisions)).not.toEqual(expect.arrayContaining(steps))
		const left = elements.map(({ element }) => ({ element, choice: 'drop', why: 'room' }))
		const dropped = decisionsSchema.parse({ ...settled, insert: { left } })
		expect(listedOn(dropped)).not.toEqual(expect.arrayContaining(steps))
	})
})

describe('the insert order', () => {
	const visit = visitWith({
		posture: { left: { fpi6: flat, supinationResistance: 'high', forefoot: 'varus-flexible' } },
		feet: { left: { heelWidthMm: 60, heelToBallMm: 190 } },
		conditions: [
			has('flexible-flatfoot-pain'),
			has('metatarsalgia'),
			has('hallux-limitus'),
			has('hypermobility'),
		],
		body: { massKg: 70 },
		screening: { neurological: { right: { feltHallux: false } } },
	})
	const { insert, prescription } = assess(visit)
	const elements = insert.left.elements
	const said = [
		...elements.flatMap((element) => [element, ...(element.cautioned ?? [])]),
		...insert.conflicts,
	]
	it('says all that there are words for the laboratory for', () => {
		const text = textOf(orderOf(visit))
		const told = said.flatMap((statement) => spokenTo('laboratory', statement) ?? [])
		expect(told.length).toBeGreaterThan(5)
		for (const words of told) expect(text).toContain(bare(words))
	})
	it('says nothing that there are no such words for, and nothing of wearing in', () => {
		const text = textOf(orderOf(visit))
		const kept = [...said, ...insert.wearIn, ...insert.right.stoppedBy].filter(
			(statement) => spokenTo('laboratory', statement) === undefined,
		)
		expect(kept.length).toBeGreaterThan(5)
		for (const { says } of kept) expect(text).not.toContain(bare(says))
	})
	it('orders nothing for a limb whose insert is held, and leaves nothing to be settled', () => {
		expect(isHeld(prescription.gate, 'insert', 'right')).toBe(true)
		const { blocks } = orderOf(visit)
		const design = blocks.find((block) => block.kind === 'table')
		expect(design?.head).toEqual([
			sentences['order.element'],
			sentences['common.left'],
			sentences['order.where'],
			sentences['order.how'],
		])
		expect(textOf(orderOf(visit))).toContain('Right side: no insert.')
		expect(textOf(orderOf(visit))).not.toMatch(/settled|to be decided/)
	})
	it("gives the figures of a changed element, or the prescriber's own words", () => {
		const change = (more: object) =>
			textOf(
				orderOf(visit, {
					...noDecisions,
					insert: {
						left: [
							{
								element: 'rearfoot-post-medial',
								choice: 'change',
								value: 2,
								why: 'comfort',
								...more,
							},
						],
					},
				}),
			)
		const built = (heightMm: number) =>
			bare(
				spokenTo(
					'laboratory',
					state('insert.rearfoot-post-medial', { side: 'left', heelWidthMm: 60, heightMm }),
				) ?? '',
			)
		expect(textOf(orderOf(visit))).toContain(built(4.2))
		expect(change({})).toContain(built(2.1))
		expect(change({})).not.toContain(built(4.2))
		expect(change({ says: 'of cork' })).toContain('of cork')
		expect(change({ says: 'of cork' })).not.toContain(built(2.1))
		// its own line for each thing that is ordered, and none for what is not
		const [design] = orderOf(visit).blocks.filter((block) => block.kind === 'table')
		expect(design?.rows).toHaveLength(insert.left.elements.length)
		// an angle that no post has is drawn and listed, never worked out
		expect(change({ value: 60 })).not.toMatch(/NaN|undefined/)
	})
	it('names laboratory, number, day and address as they were typed, and what goes along', () => {
		const order = {
			number: 'B-17',
			laboratory: 'Bench Lane Orthotics',
			neededBy: '12 February',
			shipTo: 'Front desk',
			sent: 'plaster cast',
		}
		const typed = orderOf(visit, decisionsSchema.parse({ ...noDecisions, order }))
		expect(typed.subject).toEqual(
			expect.arrayContaining([
				[sentences['subject.order'], 'B-17'],
				[sentences['subject.laboratory'], 'Bench Lane Orthotics'],
				[sentences['subject.neededBy'], '12 February'],
				[sentences['subject.shipTo'], 'Front desk'],
			]),
		)
		expect(textOf(typed)).toContain('Sent along: plaster cast.')
		expect(textOf(orderOf(visit))).not.toContain('Sent along')
	})
})

describe('what the player reads that waits', () => {
	const sore = visitWith({
		posture: {
			left: { fpi6: flat, supinationResistance: 'high' },
			right: { fpi6: flat, supinationResistance: 'high' },
		},
		feet: {
			left: { heelWidthMm: 60, heelToBallMm: 190 },
			right: { heelWidthMm: 60, heelToBallMm: 190 },
		},
		conditions: [has('flexible-flatfoot-pain', 'both')],
	})
	const told = (screening: NonNullable<Visit['screening']>) => {
		const visit = { ...sore, screening: { ...sore.screening, ...screening } }
		const assessment = assess(visit)
		const input = {
			visit,
			assessment,
			decisions: settleAll(noDecisions, assessment.prescription, 'asked elsewhere'),
			clinic,
			signedAt: '2027-01-20T12:00:00.000Z',
			draft: false,
			on: visit.visitDate,
		}
		return { input, page: textsIn(playerReport(input).blocks), gate: assessment.prescription.gate }
	}
	const waitsOn = (side: 'left' | 'right') =>
		spokenTo('player', state('insert.held', { side, until: [] }))
	it('is ordered for neither foot while sport is held for one', () => {
		const { input, page, gate } = told({
			boneStress: {
				side: 'left',
				site: 'navicular',
				focalTenderness: true,
				loadPain: true,
				weeksOfPain: 5,
			},
		})
		expect(isHeld(gate, 'sport')).toBe(true)
		expect(isHeld(gate, 'insert', 'right')).toBe(false)
		expect(input.assessment.prescription.insert.right.state).toBe('proposed')
		expect(page).toContain(sentences['pageOne.waits'])
		expect(kinds['insert-order'].problems(input)).toEqual([
			expect.stringMatching(/^insert: held, given a visit whose sport waits/),
		])
	})
	it('is the one foot whose insert is held, where sport is not: the other is ordered', () => {
		const { input, page, gate } = told({
			neurological: { left: { feltHallux: false, feltFirstHead: true, feltFifthHead: true } },
		})
		expect(isHeld(gate, 'sport')).toBe(false)
		expect(isHeld(gate, 'insert', 'left')).toBe(true)
		expect(kinds['insert-order'].problems(input)).toEqual([])
		expect(page).toContain(waitsOn('left'))
		expect(page).not.toContain(waitsOn('right'))
	})
})
