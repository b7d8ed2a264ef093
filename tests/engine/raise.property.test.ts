/** What every heel raise must keep, over random visits. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { openGate } from '../../shared/engine/facts/held.ts'
import { isTrainer, rolesOfPair } from '../../shared/engine/facts/trainer.ts'
import type {
	RaiseInFoot,
	RaiseInPair,
	RaiseResult,
} from '../../shared/engine/findings/assessment.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { swapVisit } from './mirror.ts'
import { holding, raiseOf } from './raise-visit.ts'
import {
	ankles,
	body,
	conditions,
	feet,
	footwear,
	numbers,
	player,
	postures,
	validVisit,
	wholeVisit,
} from './random-visit.ts'

const visits = validVisit({ player, feet, ankles, posture: postures, body, conditions, footwear })
/** Of a visit in which nothing is held. */
const freely = (visit: Visit, pairsLeftOff: ReadonlySet<string> = new Set()) =>
	raiseOf(visit, { gate: openGate, pairsLeftOff })
const isLeftOff = ({ limits }: RaiseInPair): boolean =>
	limits.some(({ code }) => code === 'raise.left-off')
const worn = ({ pairs }: RaiseResult): RaiseInPair[] => pairs.filter((pair) => !isLeftOff(pair))
const differenceMm = ({ left, right }: { left: number; right: number }): number => left - right
const addedTo = ({ left, right }: RaiseInPair) => ({ left: left.addMm, right: right.addMm })

it('raises are met among the visits drawn', () => {
	const drawn = fc.sample(visits, { numRuns: 400, seed: 3 }).map((visit) => freely(visit).result)
	const kinds = new Set(drawn.map(({ aim }) => aim.kind))
	expect([...kinds].sort()).toEqual(['leg-length', 'none', 'pain', 'range'])
	expect(drawn.some(({ aim, pairs }) => aim.kind === 'range' && pairs.some(isLeftOff))).toBe(true)
	expect(drawn.some(({ aim }) => aim.kind !== 'leg-length' && aim.legLengthMm)).toBe(true)
})
it('each pair has one figure for each foot, and every pair that is owned has one', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { result, context } = freely(visit)
			const ids = result.pairs.map(({ pair }) => pair)
			expect(new Set(ids).size).toBe(ids.length)
			const owned = (visit.footwear ?? []).map(({ id }) => id)
			expect(ids.slice(0, owned.length)).toEqual(owned)
			const ready = (visit.footwear ?? []).filter(({ id }) =>
				worn(result).some(({ pair }) => pair === id),
			)
			const filled = ready.flatMap((pair) => rolesOfPair(pair))
			expect(ids.slice(owned.length)).toEqual(
				context.facts.roles.filter((role) => !filled.includes(role)).map((role) => `role.${role}`),
			)
			for (const finding of result.findings.filter(({ code }) => code === 'raise.pair'))
				expect(worn(result).map(addedTo)).toContainEqual(finding.params.mm)
		}),
	)
})
it('left less right is the correction of the leg length in every pair that is worn', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { result } = freely(visit)
			const correction = differenceMm(result.aim.legLengthMm ?? { left: 0, right: 0 })
			for (const entry of worn(result))
				expect(differenceMm(addedTo(entry)), entry.pair).toBeCloseTo(correction, 9)
			for (const step of result.steps.filter(({ when }) => when !== 'stop'))
				expect(differenceMm(step.addMm)).toBeCloseTo(correction, 9)
		}),
	)
})
it('nothing is put into a pair that is left off', () => {
	fc.assert(
		fc.property(visits, fc.constantFrom('p1', 'p2'), (visit, pair) => {
			const { result } = freely(visit, new Set([pair]))
			const dangerous = (visit.footwear ?? []).filter(
				({ id, damage = [] }) =>
					id === pair || damage.includes('stud-sharp') || damage.includes('sole-separated'),
			)
			const off = result.pairs.filter(isLeftOff)
			for (const { id } of dangerous) expect(off.map((entry) => entry.pair)).toContain(id)
			for (const entry of off) expect(addedTo(entry)).toEqual({ left: 0, right: 0 })
		}),
	)
})
/** The most that goes under a heel inside this pair: 12 mm in trainers and everyday shoes, or 6. */
function insideLimitMm({ pair }: RaiseInPair, visit: Visit): number {
	const owned = visit.footwear?.find(({ id }) => id === pair)
	const roles: readonly string[] = owned ? rolesOfPair(owned) : [pair.replace('role.', '')]
	const everyday = roles.every((role) => role === 'running' || role === 'everyday')
	return everyday || (owned && isTrainer(owned)) ? 12 : 6
}
const isWithin = ({ addMm, madeBy, addedUnderHeelMm }: RaiseInFoot, limitMm: number) => {
	expect(addedUnderHeelMm).toBeLessThanOrEqual(limitMm)
	expect(addMm === 0).toBe(madeBy === 'none')
}
it('stays within both limits', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			for (const entry of worn(freely(visit).result)) {
				const limitMm = insideLimitMm(entry, visit)
				isWithin(entry.left, limitMm)
				isWithin(entry.right, limitMm)
				// what is for both heels never lifts them above 24 mm, the offset of the pair included
				const bothMm = Math.min(entry.left.addMm, entry.right.addMm)
				if (bothMm > 0) expect((entry.offsetMm ?? 0) + bothMm).toBeLessThanOrEqual(24)
			}
		}),
	)
})
it('without an offset a raise for range has no figure, and says what to measure', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { result } = freely(visit)
			if (result.aim.kind !== 'range') return
			for (const entry of worn(result).filter(({ offsetFrom }) => offsetFrom === 'unknown')) {
				const { left, right, limits } = entry
				expect(left.heelAboveForefootMm).toBeUndefined()
				// a pain whose trials do not look at the offset may still have one
				if (limits.some(({ code }) => code === 'raise.measure-offset'))
					expect(Math.min(left.addMm, right.addMm)).toBe(0)
				else expect(Math.min(left.addMm, right.addMm)).toBeGreaterThanOrEqual(0)
			}
		}),
	)
})
it.each(['weight', 'insert'] as const)('%s held on one limb: both heels or neither', (what) => {
	fc.assert(
		fc.property(visits, fc.constantFrom('left' as const, 'right' as const), (visit, side) => {
			const { result } = raiseOf(visit, { gate: holding(what, side) })
			for (const { left, right } of result.pairs) expect(Math.min(left.addMm, right.addMm)).toBe(0)
			expect(['none', 'leg-length']).toContain(result.aim.kind)
			for (const entry of result.pairs) expect(entry[side].addMm).toBe(0)
		}),
	)
})
it('held: no aim, no figure, no step, and no proposal', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { result } = raiseOf(visit, { gate: holding('raise', 'person') })
			expect(result.aim).toEqual({ kind: 'none', because: [] })
			expect([result.pairs, result.steps, result.workings]).toEqual([[], [], []])
			for (const { code, params } of result.findings) {
				expect(code).toBe('raise.worn')
				expect(params.verdict).toBe('leave')
			}
		}),
	)
})
it('an aim of none gives nothing', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { result } = raiseOf(visit)
			if (result.aim.kind !== 'none') return
			expect(result.steps).toEqual([])
			for (const entry of result.pairs) expect(addedTo(entry)).toEqual({ left: 0, right: 0 })
		}),
	)
})
it('a raise is given up step by step, never upwards', () => {
	fc.assert(
		fc.property(visits, ({ ...visit }) => {
			const { steps } = freely(visit).result
			const weaning = steps.filter(({ code }) => code === 'raise.step-wean')
			const bothMm = weaning.map(({ addMm }) => Math.min(addMm.left, addMm.right))
			expect(bothMm).toEqual(bothMm.toSorted((one, other) => other - one))
			if (bothMm.length > 0) expect(bothMm.at(-1)).toBe(0)
			for (const { from } of steps) expect(from).toMatch(/^P\d+(\.\d+)?D$/)
		}),
	)
})
/** What of a result has sides, without its words. */
const seen = ({ aim, pairs, steps, findings }: RaiseResult, swap: boolean) => {
	const turned = (mm: { left: unknown; right: unknown } | undefined) =>
		mm && (swap ? { left: mm.right, right: mm.left } : { left: mm.left, right: mm.right })
	const side = (name: unknown) =>
		!swap ? name : name === 'left' ? 'right' : name === 'right' ? 'left' : name
	return {
		kind: aim.kind,
		mm: turned(aim.mm),
		pairs: pairs.map((entry) => ({
			...entry,
			...turned(entry),
			limits: entry.limits.map(({ code, params }) => [
				code,
				{ ...params, side: side(params.side) },
			]),
		})),
		steps: steps.map(({ from, when, addMm }) => [from, when, turned(addMm)]),
		findings: findings.map(({ code, side: of }) => `${code} ${side(of)}`).toSorted(),
	}
}
it('swapped sides in, swapped sides out', () => {
	fc.assert(
		fc.property(visits, (visit: Visit) => {
			expect(seen(raiseOf(swapVisit(visit)).result, true)).toEqual(
				seen(raiseOf(visit).result, false),
			)
		}),
	)
})
it('no number is NaN or infinite, every finding has its source and its id once', () => {
	fc.assert(
		fc.property(wholeVisit, (visit) => {
			const { result } = raiseOf(visit)
			expect(numbers(result).every(Number.isFinite)).toBe(true)
			const ids = result.findings.map(({ id }) => id)
			expect(new Set(ids).size).toBe(ids.length)
			for (const finding of result.findings) expect(finding.basis.source, finding.id).not.toBe('')
		}),
	)
})
