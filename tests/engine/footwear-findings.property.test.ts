/**
 * What every finding, wish, reason and change of the footwear room keeps, over random visits and
 * shelves; own properties, no source.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Model, Shelf } from '../../shared/engine/visit/shelf.ts'
import { readings } from '../../shared/engine/words/en/readings.ts'
import { sentences } from '../../shared/engine/words/en/sentences.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { modelOf } from './random-shelf.ts'
import { wholeVisit } from './random-visit.ts'

const shelves = fc
	.uniqueArray(modelOf, { selector: (model: Model) => model.id, maxLength: 3 })
	.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models }))
const footwearOf = (...[visit, shelf]: Parameters<typeof whole>) => whole(visit, shelf).footwear
const whole = (visit: Parameters<typeof assess>[0], shelf: Shelf) =>
	assess(visit, [], shippedProtocol, shelf)

it('each finding has an id of its own, and its code begins with its topic', () => {
	fc.assert(
		fc.property(wholeVisit, shelves, (visit, shelf) => {
			const { findings } = footwearOf(visit, shelf)
			const ids = findings.map(({ id }) => id)
			expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([])
			for (const { code } of findings) expect(code!.split('.')[0]).toBe('footwear')
		}),
		{ numRuns: 150 },
	)
})
it('everything said has a code of the catalogue, and parameters that survive a file', () => {
	fc.assert(
		fc.property(wholeVisit, shelves, (visit, shelf) => {
			const { findings, target, contradictions, current, ranked, ...work } = footwearOf(
				visit,
				shelf,
			)
			const rows = [...(work.modifications ?? []), ...(work.lacing ?? [])]
			const said = [
				...findings,
				...target.seek,
				...target.avoid,
				...contradictions,
				...current,
				...rows,
				...rows.flatMap(({ stated }) => [stated!.name, stated!.limits, ...stated!.cautions]),
				...ranked.flatMap((model) => [
					...model.stops,
					...model.for,
					...model.against,
					...model.changes!,
				]),
			]
			for (const statement of said) {
				const { code, params, says } = statement
				expect(Object.keys(sentences)).toContain(code)
				expect(JSON.parse(JSON.stringify(params))).toEqual(params)
				expect(says).not.toBe('')
				// said again from the record, it reads the same
				const words = sentences[code as keyof typeof sentences] as unknown as {
					clinician: (filling: unknown) => string
				}
				expect(words.clinician(JSON.parse(JSON.stringify(params)))).toBe(says)
				expect(spokenTo('coach', statement)).not.toBe('')
			}
			for (const model of ranked) {
				expect(model.wouldChange).toEqual(model.changes!.map((change) => change.says))
				expect(model.unknown.length).toBe(model.unknownFeatures!.length)
			}
		}),
		{ numRuns: 60 },
	)
})
it('a reason is a code of a measure, a condition or a reading, never a phrase', () => {
	fc.assert(
		fc.property(wholeVisit, shelves, (visit, shelf) => {
			const { findings, ranked } = footwearOf(visit, shelf)
			const because = [
				...findings.flatMap((finding) => finding.because),
				...ranked.flatMap((model) =>
					[...model.stops, ...model.for, ...model.against].flatMap((one) => one.because),
				),
			]
			for (const { measure } of because)
				expect(
					measure in readings || /^[a-z0-9]+(?:-[a-z0-9]+)*$|^[a-z][A-Za-z]+$/.test(measure),
				).toBe(true)
		}),
		{ numRuns: 60 },
	)
})
