/** What the insert room says: every row's figures fill its sentence, and each reader is told his own. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { asksOfInsert } from '../../shared/engine/insert/elements/asks.ts'
import { elementRows } from '../../shared/engine/insert/elements/elements.ts'
import { cautionOf } from '../../shared/engine/insert/said.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { countsOf, fleschKincaid } from '../../shared/engine/report/readability.ts'
import { conditions } from '../../shared/engine/visit/terms.ts'
import { insertSentences } from '../../shared/engine/words/en/insert.ts'
import { elementNames } from '../../shared/engine/words/en/insert-names.ts'
import type { Audience } from '../../shared/engine/words/sentence.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { flat, has, visitWith } from '../published/known-insert.ts'

const protocol = openProtocol()
const gaps = /undefined|NaN|\[object|\s{2}|\s[.,;]|\.\./
describe('words of the insert', () => {
	it('every caution of a row is filled by its figures, for whoever reads it', () => {
		for (const { cautions } of elementRows)
			for (const caution of cautions)
				for (const reader of ['clinician', 'player', 'doctor', 'laboratory'] as Audience[])
					expect(spokenTo(reader, cautionOf(caution, protocol)) ?? '').not.toMatch(gaps)
	})
	it('every element of a row has a sentence, and is told to player and laboratory', () => {
		for (const { element, code } of elementRows) {
			const words = insertSentences[(code ?? `insert.${element}`) as 'insert.heel-cushion']
			expect(words, element).toBeDefined()
			expect(words.player, element).toBeDefined()
			expect(words.laboratory, element).toBeDefined()
		}
	})
	it('whatever a visit says has no gap in it, for any reader', () => {
		for (const condition of conditions) {
			const { insert } = assess(
				visitWith({
					posture: { left: { fpi6: flat, supinationResistance: 'high' } },
					feet: { left: { heelWidthMm: 60, heelToBallMm: 190 } },
					conditions: [has(condition), has('flexible-flatfoot-pain'), has('hypermobility')],
					body: {
						massKg: 70,
						legLengthDifferenceMm: 8,
						shorterLeg: 'left',
						legLengthSymptoms: true,
					},
				}),
			)
			const said = [
				...insert.left.elements.flatMap((element) => [element, ...(element.cautioned ?? [])]),
				...insert.left.stoppedBy,
				...insert.settled!,
				...insert.wearIn,
				...insert.findings,
			]
			for (const statement of said)
				for (const reader of ['clinician', 'player', 'doctor', 'laboratory'] as Audience[])
					expect(spokenTo(reader, statement) ?? '', condition).not.toMatch(gaps)
		}
	})
	// Kincaid 1975, as in the trade file on documents: a player of 13 reads grade 7
	it('the player reads short sentences of grade 7 at most', () => {
		for (const condition of conditions) {
			const { insert } = assess(
				visitWith({
					posture: { left: { fpi6: flat, firstRay: 'plantarflexed' } },
					conditions: [has(condition), has('flexible-flatfoot-pain')],
					body: {
						massKg: 70,
						legLengthDifferenceMm: 20,
						shorterLeg: 'left',
						legLengthSymptoms: true,
					},
				}),
			)
			const told = [
				...insert.left.elements.flatMap((element) => [element, ...(element.cautioned ?? [])]),
				...insert.wearIn,
				...insert.findings,
			].flatMap((statement) => spokenTo('player', statement) ?? [])
			for (const words of told) {
				const counts = countsOf(words)!
				expect(fleschKincaid(counts), words).toBeLessThanOrEqual(7)
				expect(counts.words / counts.sentences, words).toBeLessThanOrEqual(15)
			}
		}
	})
	it('the maker is told neither conditions nor what stops an insert', () => {
		const { insert } = assess(
			visitWith({
				posture: { left: { fpi6: flat, forefoot: 'varus-flexible' } },
				conditions: [has('flexible-flatfoot-pain'), has('knee-osteoarthritis')],
				screening: { neurological: { right: { feltHallux: false } } },
				body: { massKg: 70 },
			}),
		)
		const withheld = insert.settled!.filter(({ code }) => code === 'insert.withheld')
		expect(withheld.map(({ params }) => params)).toContainEqual({
			side: 'left',
			element: 'rearfoot-post-medial',
			against: [{ rule: 'knee-inward-load', conditions: ['knee-osteoarthritis'] }],
		})
		expect(withheld.flatMap((conflict) => spokenTo('laboratory', conflict) ?? [])).toEqual([])
		expect(insert.right.stoppedBy.map(({ id }) => id)).toEqual(['foot-at-risk.right'])
		expect(insert.right.stoppedBy.flatMap((stop) => spokenTo('laboratory', stop) ?? [])).toEqual([])
	})
	it('the player is told how to wear it in, and when to take it out', () => {
		const { wearIn } = assess(visitWith({ conditions: [has('metatarsalgia')] })).insert
		const told = wearIn.map((step) => [step.code, spokenTo('player', step) !== undefined])
		expect(told).toEqual(wearIn.map(({ code }) => [code, true]))
		expect(wearIn.at(-1)).toMatchObject({ code: 'insert.wear-stop', params: { painDays: 3 } })
		expect(wearIn.flatMap((step) => spokenTo('laboratory', step) ?? [])).toEqual([])
	})
})
describe('what a condition asks of an insert', () => {
	it.each([
		[
			'metatarsalgia',
			['forefoot-post-lateral', 'first-ray-cutout', 'metatarsal-dome*', 'forefoot-cushion*'],
			[],
		],
		['sesamoid-pain', ['forefoot-post-lateral', 'first-ray-cutout', 'first-head-aperture*'], []],
		['knee-osteoarthritis', [], ['rearfoot-post-medial!', 'medial-skive!']],
		['leg-length-difference', [], []],
		['blister', [], []],
		['tarsal-coalition', [], ['rearfoot-post-medial!', 'medial-skive!']],
	] as const)('%s', (condition, calls, against) => {
		const asks = asksOfInsert(condition)
		expect(asks.calls.map(({ element, alone }) => `${element}${alone ? '*' : ''}`)).toEqual(calls)
		expect(
			asks.against.map(({ element, leavesOut }) => `${element}${leavesOut ? '!' : ''}`),
		).toEqual(against)
	})
	it('what holds an insert, and gentle wearing in, are read off too', () => {
		expect(asksOfInsert('neuropathy').holds).toEqual([{ past: true }])
		expect(asksOfInsert('navicular-stress-fracture').holds).toEqual([{ past: false }])
		expect(conditions.filter((condition) => asksOfInsert(condition).gentle)).toEqual([
			'hypermobility',
		])
		expect(asksOfInsert('metatarsalgia').holds).toEqual([])
		expect(
			conditions.flatMap((condition) =>
				asksOfInsert(condition).withDevice.map((code) => [condition, code]),
			),
		).toEqual([['foot-or-ankle-surgery', 'insert.caution-surgery']])
		expect(asksOfInsert('calcaneal-apophysitis').calls).toEqual([
			{ element: 'heel-cushion', alone: true, inBothShoes: true },
		])
	})
	// read on a visit with nothing else recorded, the tables must say the same
	it.each(conditions)(
		'%s: what it calls for alone is what is proposed for it, or gave way',
		(condition) => {
			const { insert } = assess(visitWith({ conditions: [has(condition)], body: { massKg: 70 } }))
			const carriers = ['device', 'shell', 'heel-cup', 'length', 'cover']
			const { calls, holds } = asksOfInsert(condition)
			const proposed = insert.left.elements
				.map(({ element }) => element)
				.filter((element) => !carriers.includes(element) && !element.endsWith('raise'))
			const gaveWay = insert.settled!.flatMap(({ side, elements }) =>
				side === 'left' ? elements : [],
			)
			const alone = calls
				.filter((call) => call.alone && call.element !== 'cover')
				.map(({ element }) => element as string)
			expect(insert.left.state === 'held').toBe(holds.length > 0)
			if (holds.length === 0)
				expect(proposed).toEqual(
					alone.filter((element) => proposed.includes(element) || !gaveWay.includes(element)),
				)
		},
	)
	it.each(conditions)('%s: a past one holds an insert where the table says so', (condition) => {
		const { insert } = assess(visitWith({ conditions: [has(condition, 'left', 'past')] }))
		const past = asksOfInsert(condition).holds.some((hold) => hold.past)
		expect(insert.left.state === 'held').toBe(past)
	})
	it('names elements of the catalogue only', () => {
		for (const condition of conditions)
			for (const { element } of [
				...asksOfInsert(condition).calls,
				...asksOfInsert(condition).against,
			])
				expect(Object.keys(elementNames)).toContain(element)
	})
})
