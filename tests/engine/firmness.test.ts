/** How firmly a proposal stands against the error of measuring: the same each time, and quick. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { firmness } from '../../shared/engine/firmness/firmness.ts'
import { errorSequence, mostMeasures, trials } from '../../shared/engine/firmness/sequence.ts'
import { moved, variedMeasures } from '../../shared/engine/firmness/varied.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
const visitWith = (parts: object): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '1998-04-02', sex: 'male' },
		visitDate: '2026-09-01',
		...parts,
	})
const feet = (mm: number | number[]) => ({
	left: { heelToToeMm: mm },
	right: { heelToToeMm: mm },
})
const of = (visit: Visit) => firmness(visit, [], assess(visit), protocol)

describe('the sequence of errors', () => {
	it('gives each measure a mean of 0 and a variance of 1, none following another', () => {
		const sequence = errorSequence(mostMeasures)
		expect(sequence).toHaveLength(trials)
		const column = (at: number) => sequence.map((errors) => errors[at]!)
		const mean = (values: number[]) => values.reduce((sum, one) => sum + one, 0) / values.length
		for (let at = 0; at < mostMeasures; at++) {
			expect(mean(column(at))).toBeCloseTo(0, 10)
			// the outermost shares stand at their middle: a little below 1
			expect(mean(column(at).map((z) => z * z))).toBeGreaterThan(0.97)
			expect(new Set(column(at)).size).toBe(trials)
			for (let other = 0; other < at; other++)
				expect(Math.abs(mean(column(at).map((z, i) => z * column(other)[i]!)))).toBeLessThan(0.1)
		}
	})
})
describe('a measure that is moved', () => {
	it('is moved by less where it was read more often, and the visit stays as it is', () => {
		const [once] = variedMeasures(visitWith({ feet: feet(260) }), protocol)
		const [twice] = variedMeasures(visitWith({ feet: feet([260, 260]) }), protocol)
		expect(once?.error).toBe(protocol.value('sizing.readingSemMm'))
		expect(twice?.error).toBeCloseTo(once!.error / Math.SQRT2)
		const visit = visitWith({ feet: feet([260, 261]) })
		const by = moved(visit, variedMeasures(visit, protocol), [1, 0])
		expect(by.feet?.left?.heelToToeMm).toEqual([260 + twice!.error, 261 + twice!.error])
		expect(by.feet?.right).toEqual(visit.feet?.right)
		expect(visit.feet?.left?.heelToToeMm).toEqual([260, 261])
	})
	it('has an error that is published: a usual practice is none', () => {
		const visit = visitWith({ body: { legLengthDifferenceMm: 8 }, feet: feet(260) })
		expect(variedMeasures(visit, protocol).map(({ path }) => path)).toEqual([
			'feet.left.heelToToeMm',
			'feet.right.heelToToeMm',
		])
	})
})
describe('firmness', () => {
	it('is the same each time, and never said of the gate', () => {
		const visit = visitWith({ feet: feet(260) })
		expect(of(visit)).toEqual(of(visit))
		expect(Object.keys(of(visit))).toEqual(['size'])
	})
	it('of a size grows with the readings, and names the measure that decides', () => {
		const often = of(visitWith({ feet: feet(Array.from({ length: 3 }, () => 260)) })).size!
		const once = of(visitWith({ feet: feet(260) })).size!
		expect(often.share).toBeGreaterThanOrEqual(once.share!)
		expect(once.firmness).not.toBe('steady')
		expect(once.decidedBy).not.toEqual([])
		for (const path of once.decidedBy) expect(path).toMatch(/^feet\.(left|right)\.heelToToeMm$/)
	})
	it('of a raise is near a limit where the lunge is, and steady far from it', () => {
		const raised = (lungeDeg: number) =>
			of(
				visitWith({
					feet: feet(260),
					play: { surfaces: ['natural-firm'], matchesPerWeek: 1 },
					ankles: { left: { lungeDeg }, right: { lungeDeg: 42 } },
				}),
			).raise
		const limit = protocol.value('ankle.restrictedDeg')
		expect(raised(limit - 8)?.firmness).toBe('steady')
		expect(raised(limit - 8)?.decidedBy).toEqual([])
		expect(raised(limit - 0.2)).toMatchObject({
			firmness: 'either-way',
			decidedBy: ['ankles.left.lungeDeg'],
		})
	})
	it('is not worked out where no error is published, or only conditions speak', () => {
		const visit = visitWith({
			feet: feet(260),
			posture: { left: { fpi6: [2, 2, 2, 1, 1, 0] } },
			conditions: [{ condition: 'flexible-flatfoot-pain', side: 'left', status: 'current' }],
		})
		expect(of(visit).insert).toEqual({ firmness: 'not-worked-out', decidedBy: [] })
	})
})
