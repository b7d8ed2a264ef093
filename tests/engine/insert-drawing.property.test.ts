/** The drawing of an insert at true size: as long and as wide as the foot, and a mirror image. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { InsertElement } from '../../shared/engine/findings/assessment.ts'
import { elementRows } from '../../shared/engine/insert/elements/elements.ts'
import { type InsertMeasures, insertSheets } from '../../shared/engine/insert/outline/outline.ts'
import { roomOn, type SheetPaper, sheetPapers } from '../../shared/engine/insert/outline/paper.ts'
import { borderOf } from '../../shared/engine/insert/outline/shape.ts'
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
	const draw = (
		left: InsertMeasures,
		right: InsertMeasures,
		length = 'full',
		paper: SheetPaper = 'A4',
	) =>
		insertSheets(
			{
				left: { measures: left, elements: elements(length) },
				right: { measures: right, elements: elements(length) },
			},
			protocol,
			paper,
		)
	/** Each foot of a sheet: its path and its marks about its heel, and where it stands. */
	const feetOf = (svg: string) =>
		[
			...svg.matchAll(/<g transform="([^"]+)"><path d="([^"]+)" fill="#f4f7f6"[^>]*>(.*?)<\/g>/gs),
		].map(([, place = '', path = '', marks = '']) => ({ place, places: placesOf(path), marks }))
	const number = String.raw`-?\d+(?:\.\d+)?`
	const placesOf = (path: string) =>
		[...path.matchAll(new RegExp(`(${number}) (${number})`, 'g'))].map(
			(pair) => [Number(pair[1]), Number(pair[2])] as const,
		)
	const span = (values: number[]) => Math.max(...values) - Math.min(...values)
	it('is as long and as wide as the foot, in millimetres', () =>
		fc.assert(
			fc.property(sizes, fc.constantFrom('A4' as const, 'Letter' as const), (measures, paper) => {
				const { sheets } = draw(measures, measures, 'full', paper)
				for (const { svg, widthMm, heightMm } of sheets) {
					expect({ widthMm, heightMm }).toEqual(roomOn(sheetPapers[paper].own))
					expect(svg).toContain(`viewBox="0 0 ${widthMm} ${heightMm}"`)
					for (const { places } of feetOf(svg)) {
						expect(span(places.map(([, y]) => y))).toBeCloseTo(measures.lengthMm, 1)
						expect(span(places.map(([x]) => x))).toBeCloseTo(
							Math.max(measures.widthMm, measures.heelWidthMm),
							1,
						)
					}
				}
			}),
		))
	it('right is the mirror of left', () =>
		fc.assert(
			fc.property(sizes, (measures) => {
				const [left, right, ...more] = draw(measures, measures).sheets.flatMap(({ svg }) =>
					feetOf(svg).map(({ places }) => places),
				)
				expect(more).toEqual([])
				expect(right!.map(([x, y]) => [x === 0 ? 0 : -x, y])).toEqual(left)
			}),
		))
	it('holds both feet on one sheet of the paper where they go on it, else one foot a sheet', () => {
		const sidesOf = (lengthMm: number, paper: SheetPaper) => {
			const foot = { lengthMm, ballLengthMm: 0.725 * lengthMm, widthMm: 0.385 * lengthMm }
			const measures = { ...foot, heelWidthMm: 0.25 * lengthMm }
			return draw(measures, measures, 'full', paper).sheets.map(({ sides }) => sides.join(' '))
		}
		for (const lengthMm of [150, 200, 245, 255])
			expect(sidesOf(lengthMm, 'A4'), `${lengthMm}`).toEqual(['left right'])
		for (const lengthMm of [150, 200, 245, 250])
			expect(sidesOf(lengthMm, 'Letter'), `${lengthMm}`).toEqual(['left right'])
		expect(sidesOf(280, 'A4')).toEqual(['left', 'right'])
		// too long for the clinic's paper even when turned: one larger sheet, not two
		expect(sidesOf(310, 'A4')).toEqual(['left right'])
		expect(sidesOf(400, 'A4')).toEqual(['left', 'right'])
	})
	it('draws no mark over the border of its foot', () => {
		// feet as they are: a ball at two thirds to four fifths of the length
		const feet = fc
			.tuple(sizes, fc.integer({ min: 66, max: 79 }))
			.map(([size, share]) => ({ ...size, ballLengthMm: (size.lengthMm * share) / 100 }))
		fc.assert(
			fc.property(feet, (measures) => {
				const [foot] = feetOf(draw(measures, {}).sheets[0]!.svg)
				const drawn = [
					...[...foot!.marks.matchAll(/<path d="([^"]+)"/g)].flatMap(([, path]) => placesOf(path!)),
					...[
						...foot!.marks.matchAll(/<ellipse cx="(.*?)" cy="(.*?)" rx="(.*?)" ry="(.*?)"/g),
					].flatMap((found) => {
						const [x, y, across, along] = found.slice(1).map(Number) as [
							number,
							number,
							number,
							number,
						]
						return Array.from({ length: 24 }, (_, step) => {
							const angle = (step * Math.PI) / 12
							return [x + across * Math.cos(angle), y + along * Math.sin(angle)] as const
						})
					}),
				]
				expect(drawn.length).toBeGreaterThan(100)
				const border = borderOf({
					...measures,
					fifthLengthMm: measures.ballLengthMm * protocol.value('insert.fifthHeadPerBall'),
					behindHeadsMm: protocol.value('insert.domeBehindHeadsMm'),
				})
				for (const [x, y] of drawn)
					expect(Math.abs(x), `${x} ${y}`).toBeLessThanOrEqual(
						border(x > 0 ? 'inner' : 'outer', -y) + 0.3,
					)
			}),
		)
	})
	it('three-quarter ends behind the heads', () => {
		const measures = { lengthMm: 260, ballLengthMm: 190, widthMm: 80, heelWidthMm: 60 }
		const [foot] = feetOf(draw(measures, measures, 'three-quarter').sheets[0]!.svg)
		expect(span(foot!.places.map(([, y]) => y))).toBeCloseTo(185, 1)
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
