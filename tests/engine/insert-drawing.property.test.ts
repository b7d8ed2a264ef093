/** The drawing of an insert at true size: as long and as wide as the foot, and a mirror image. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { InsertElement } from '../../shared/engine/findings/assessment.ts'
import { elementRows } from '../../shared/engine/insert/elements/elements.ts'
import {
	controlBarMm,
	type InsertMeasures,
	insertSheets,
	sheet,
	tooLarge,
} from '../../shared/engine/insert/outline/outline.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'

const protocol = openProtocol()
describe('the drawing at true size', () => {
	const sizes = fc.record({
		lengthMm: fc.integer({ min: 200, max: 265 }),
		ballLengthMm: fc.integer({ min: 130, max: 190 }),
		widthMm: fc.integer({ min: 70, max: 86 }),
		heelWidthMm: fc.integer({ min: 45, max: 68 }),
	})
	const elements = (length: string): InsertElement[] =>
		elementRows
			.map(
				(row): InsertElement => ({
					element: row.element,
					value: protocol.value(row.range[0]),
					unit: row.unit,
					where: 'both',
					says: '',
					because: [],
					basis: { rule: '', source: '', strength: 'practice' },
					cautions: [],
				}),
			)
			.concat([
				{
					element: 'length',
					choice: length,
					where: 'both',
					says: '',
					because: [],
					basis: { rule: '', source: '', strength: 'practice' },
					cautions: [],
				},
			])
	const draw = (left: InsertMeasures, right: InsertMeasures, length = 'full') =>
		insertSheets(
			{
				left: { measures: left, elements: elements(length) },
				right: { measures: right, elements: elements(length) },
			},
			protocol,
		)
	const outline = (svg: string) => {
		const path = /<path d="([^"]+)" fill="#f4f7f6"/.exec(svg)![1]!
		const all = [...path.matchAll(/-?\d+(\.\d+)?/g)].map(([number]) => Number(number))
		return {
			xs: all.filter((_, index) => index % 2 === 0),
			ys: all.filter((_, index) => index % 2 === 1),
		}
	}
	const anchors = (svg: string) =>
		[...svg.matchAll(/<path d="([^"]+)" fill="#f4f7f6"/g)].map((found) =>
			[...found[1]!.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(
				(pair) => [Number(pair[1]), Number(pair[2])] as const,
			),
		)
	it('is as long and as wide as the foot, in millimetres, with a 100 mm bar', () =>
		fc.assert(
			fc.property(sizes, (measures) => {
				const { sheets } = draw(measures, measures)
				for (const figure of sheets) {
					const { xs, ys } = outline(figure.svg)
					expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(measures.lengthMm, 1)
					expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(
						Math.max(measures.widthMm, measures.heelWidthMm),
						1,
					)
					expect(figure.svg).toContain(`H ${6 + controlBarMm}`)
					expect(figure.svg).toContain(`viewBox="0 0 ${/width="([\d.]+)mm"/.exec(figure.svg)![1]}`)
					expect(figure.widthPt / figure.widthMm).toBeCloseTo(72 / 25.4, 9)
					expect(tooLarge(figure)).toBe(
						figure.widthMm > sheet.widthMm || figure.heightMm > sheet.heightMm,
					)
				}
			}),
		))
	it('right is the mirror of left', () =>
		fc.assert(
			fc.property(sizes, (measures) => {
				const feet = draw(measures, measures).sheets.flatMap(({ svg }) => anchors(svg))
				expect(feet).toHaveLength(2)
				const [left, right] = feet as [(readonly [number, number])[], (readonly [number, number])[]]
				const middle = (left[0]![0] + right[0]![0]) / 2
				for (const [index, [x, y]] of left.entries()) {
					expect(2 * middle - x).toBeCloseTo(right[index]![0], 1)
					expect(right[index]![1]).toBeCloseTo(y, 2)
				}
			}),
		))
	it('three-quarter ends behind the heads', () => {
		const measures = { lengthMm: 260, ballLengthMm: 190, widthMm: 80, heelWidthMm: 60 }
		const { ys } = outline(draw(measures, measures, 'three-quarter').sheets[0]!.svg)
		expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(185, 1)
	})
	it('a missing measure is named, never guessed', () =>
		expect(
			insertSheets(
				{
					left: { measures: { lengthMm: 260, widthMm: 90 }, elements: elements('full') },
					right: { measures: {}, elements: [] },
				},
				protocol,
			),
		).toEqual({
			sheets: [],
			missing: [{ side: 'left', measures: ['heel to ball', 'heel width'] }],
		}))
	it('says nothing the page font lacks', () => {
		for (const figure of draw(
			{ lengthMm: 260, ballLengthMm: 190, widthMm: 90, heelWidthMm: 60 },
			{},
		).sheets)
			expect(figure.svg).not.toMatch(/[^\x20-\x7e]/)
	})
})
