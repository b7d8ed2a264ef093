/** The shelf file and its table form. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { readShelfCsv, writeShelfCsv } from '../../electron/services/shelf/shelf-csv.ts'
import { type Model, parseShelf, type Shelf } from '../../shared/engine/visit/shelf.ts'
import { modelOf } from './random-shelf.ts'

const shelves = fc
	.uniqueArray(modelOf, { selector: (model: Model) => model.id, maxLength: 6 })
	.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models }))
/** An empty list of codes and none at all are one blank cell. */
const asTable = (shelf: Shelf): Shelf => ({
	...shelf,
	models: shelf.models.map(({ codes, ...model }) => ({
		...model,
		...(codes && codes.length > 0 ? { codes } : {}),
	})),
})

it('a shelf that parses goes out as CSV and comes back the same', () =>
	fc.assert(
		fc.property(shelves, (shelf) => {
			expect(parseShelf(shelf).ok).toBe(true)
			const again = readShelfCsv(writeShelfCsv(shelf))
			expect(again.problems).toEqual([])
			expect(again.shelf.models).toEqual(asTable(shelf).models)
		}),
	))
it('no text throws; every problem has a line, a column and words; what is read passes the schema', () =>
	fc.assert(
		fc.property(
			fc.oneof(
				fc.string(),
				shelves.chain((shelf) =>
					fc.tuple(fc.nat({ max: 3000 }), fc.string({ maxLength: 4 })).map(([at, put]) => {
						const text = writeShelfCsv(shelf)
						const cut = at % (text.length + 1)
						return text.slice(0, cut) + put + text.slice(cut + 1)
					}),
				),
			),
			(text) => {
				const { shelf, problems, good } = readShelfCsv(text)
				expect(parseShelf(shelf).ok).toBe(true)
				expect(good).toBe(shelf.models.length)
				for (const problem of problems)
					expect(problem.row >= 1 && problem.column !== '' && problem.message.length > 10).toBe(
						true,
					)
			},
		),
	))
it('any value is refused or read, never thrown at', () =>
	fc.assert(
		fc.property(fc.anything(), (value) => {
			const parsed = parseShelf(value)
			expect(parsed.ok || parsed.problems.length > 0).toBe(true)
		}),
	))
