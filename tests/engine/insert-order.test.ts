/** What is told of the insert: to the laboratory what it makes, to the player how it is worn. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { insertOrder } from '../../shared/engine/report/insert-order.ts'
import { playerReport } from '../../shared/engine/report/player.ts'
import {
	type Decisions,
	decisionsSchema,
	noDecisions,
} from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
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
	const visit = visitWith({ conditions: [has('metatarsalgia')], body: { massKg: 70 } })
	const { elements } = assess(visit).insert.left
	const page = (left: object[]) =>
		playerReport({
			visit,
			assessment: assess(visit),
			decisions: decisionsSchema.parse({ ...noDecisions, insert: { left } }),
			clinic,
			signedAt: undefined,
			draft: true,
		}).blocks.flatMap((block) => (block.kind === 'list' ? block.items : []))
	const { wearIn } = assess(visit).insert
	const steps = wearIn.map((step) => spokenTo('player', step))
	const dome = elements.find(({ element }) => element === 'metatarsal-dome')!
	it('stands once it is decided: what it is for, how to wear it in, when to take it out', () => {
		const told = page([{ element: 'metatarsal-dome', choice: 'accept' }])
		expect(told).toEqual(expect.arrayContaining(steps))
		expect(told.join()).toContain(spokenTo('player', dome))
		expect(told.join()).not.toContain(dome.says)
	})
	it('is not there as a mere proposal, nor where all of it was dropped', () => {
		expect(page([])).not.toEqual(expect.arrayContaining(steps))
		const dropped = elements.map(({ element }) => ({ element, choice: 'drop', why: 'room' }))
		expect(page(dropped)).not.toEqual(expect.arrayContaining(steps))
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
	const { insert } = assess(visit)
	const elements = insert.left.elements
	const said = [
		...elements.flatMap((element) => [element, ...(element.cautioned ?? [])]),
		...insert.conflicts,
		...insert.wearIn,
		...insert.right.stoppedBy,
	]
	it('says all that there are words for the laboratory for', () => {
		const text = textOf(orderOf(visit))
		const told = said.flatMap((statement) => spokenTo('laboratory', statement) ?? [])
		expect(told.length).toBeGreaterThan(8)
		for (const words of told) expect(text).toContain(bare(words))
		const stops = insert.right.stoppedBy.map(({ id }) => id)
		expect(text).toContain(
			spokenTo('laboratory', state('insert.stopped', { side: 'right', stops })),
		)
	})
	it('says nothing that there are no such words for', () => {
		const text = textOf(orderOf(visit))
		const kept = said.filter((statement) => spokenTo('laboratory', statement) === undefined)
		expect(kept.map(({ code }) => code)).toEqual(
			expect.arrayContaining(['insert.withheld', 'insert.wear-stop', 'insert.stop-numb']),
		)
		for (const { says } of kept) expect(text).not.toContain(bare(says))
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
		// an angle that no post has is drawn and listed, never worked out
		expect(change({ value: 60 })).not.toMatch(/NaN|undefined/)
	})
})
