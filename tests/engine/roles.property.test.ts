/**
 * What the pairs of each role keep, over random visits and shelves: no wish against itself, nothing
 * where nothing may be bought, no stud under a joint at risk before a clear one. Own properties, no
 * source.
 */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { opposites } from '../../shared/engine/footwear/opposites.table.ts'
import { roleRows } from '../../shared/engine/footwear/roles.table.ts'
import { settle } from '../../shared/engine/footwear/settle.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { settlingOrder } from '../../shared/engine/protocol/settling.table.ts'
import type { Model, Shelf } from '../../shared/engine/visit/shelf.ts'
import { type Feature, surfaces } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelOf } from './random-shelf.ts'
import {
	conditions,
	feet,
	footwear,
	player,
	postures,
	validVisit,
	wholeVisit,
} from './random-visit.ts'

/** Sizes about the feet that are drawn, so that models are put forward. */
const nearTheFeet = (model: Model): Model => ({
	...model,
	sizes: model.sizes.map((size, at) => ({
		...size,
		insideLengthMm: 246 + ((size.insideLengthMm + at * 3) % 32),
		ballWidthMm: 96 + (size.ballWidthMm % 14),
	})),
})
const shelves = fc.uniqueArray(modelOf, { selector: (model: Model) => model.id, maxLength: 8 }).map(
	(models): Shelf => ({
		format: 'lastwright-shelf',
		version: 1,
		models: models.map(nearTheFeet),
	}),
)
/** Mostly well enough that something may be bought. */
const buyers = validVisit({
	player,
	feet,
	posture: postures,
	conditions,
	footwear,
	play: fc.record({ surfaces: fc.uniqueArray(fc.constantFrom(...surfaces), { maxLength: 5 }) }),
	means: fc.constantFrom('one-pair', 'one-at-a-time', 'free'),
})
const visits = fc.oneof(buyers, wholeVisit)
const planOf = (visit: Visit, shelf?: Shelf): Assessment =>
	assess(visit, [], shippedProtocol, shelf)
/** The same for every property: an assessment costs more than a look at it. */
const drawn = fc
	.sample(fc.tuple(visits, shelves), 240)
	.map(([visit, shelf]) => ({ visit, shelf, assessment: planOf(visit, shelf) }))
const each = (check: (assessment: Assessment, visit: Visit, shelf: Shelf) => void): void => {
	for (const { assessment, visit, shelf } of drawn) check(assessment, visit, shelf)
}
const pulls = (features: readonly Feature[]) =>
	opposites.filter((pair) => pair.every((feature) => features.includes(feature)))

it('seeks nothing that it avoids, and never both of two opposites', () =>
	each(({ prescription: { pairs } }) => {
		for (const { seek, avoid } of pairs) {
			expect(seek.filter((feature) => avoid.includes(feature))).toEqual([])
			expect(pulls(seek)).toEqual([])
		}
	}))
it('what gave way is told once a pair, with words for clinician and player, and stands no more', () =>
	each(({ prescription: { pairs } }) => {
		for (const { settled, seek, avoid } of pairs) {
			expect(new Set(settled.map(({ says }) => says)).size).toBe(settled.length)
			for (const { code, params, feature } of settled) {
				if (code !== 'settled.feature') continue
				expect((params.way === 'seek' ? seek : avoid).includes(feature)).toBe(false)
			}
		}
	}))
it('asks of no pair a caution', () =>
	each(({ findings }) => {
		expect(findings.filter(({ id }) => id.startsWith('footwear.contradiction'))).toEqual([])
	}))
it('each pair has an id of its own that begins with its role', () =>
	each(({ prescription: { pairs } }) => {
		const ids = pairs.map(({ id }) => id)
		expect(new Set(ids).size).toBe(ids.length)
		for (const { id, role } of pairs) expect(id.split('.')[0]).toBe(role)
	}))
it('the same visit gives the same pairs', () => {
	for (const { assessment, visit, shelf } of drawn.slice(0, 20))
		expect(planOf(visit, shelf).prescription.pairs).toEqual(assessment.prescription.pairs)
})
it('the draws hold what the properties speak of', () => {
	const pairs = drawn.flatMap(({ assessment }) => assessment.prescription.pairs)
	const held = drawn.filter(({ assessment }) => isHeld(assessment.prescription.gate, 'purchase'))
	expect(held.length).toBeGreaterThan(5)
	expect(pairs.filter(({ settled }) => settled.length > 0).length).toBeGreaterThan(5)
	expect(pairs.filter(({ shelf }) => shelf.length > 1).length).toBeGreaterThan(2)
	expect(pairs.filter(({ ownedPair }) => ownedPair !== undefined).length).toBeGreaterThan(5)
})
it('no sole stands on a ground that forbids it, and every ground of the role is served', () =>
	each(({ prescription: { gate, pairs } }, visit) => {
		if (isHeld(gate, 'purchase')) return
		for (const { sole, surfaces: grounds } of pairs)
			for (const ground of grounds) expect(suitability[sole!][ground].dry).not.toBe('forbidden')
		for (const role of new Set(pairs.map((pair) => pair.role)))
			expect(
				pairs
					.filter((pair) => pair.role === role)
					.flatMap((pair) => pair.surfaces)
					.toSorted(),
			).toEqual(
				(visit.play?.surfaces ?? [])
					.filter((ground) => roleRows[role].surfaces.includes(ground))
					.toSorted(),
			)
	}))
it('at most three models, each once and on the shelf, and only where a purchase is worth it', () =>
	each(({ prescription: { pairs } }, _visit, shelf) => {
		for (const { shelf: models, means } of pairs) {
			expect(models.length).toBeLessThanOrEqual(3)
			expect(new Set(models).size).toBe(models.length)
			for (const id of models) expect(shelf.models.some((model) => model.id === id)).toBe(true)
			if (means !== 'buy') expect(models).toEqual([])
		}
	}))
it('where nothing may be bought nothing is asked of a pair, ranked or told of buying', () =>
	each(({ prescription: { gate, pairs }, footwear: room }) => {
		if (isHeld(gate, 'shelf') || isHeld(gate, 'purchase')) {
			expect(room.ranked).toEqual([])
			for (const { shelf } of pairs) expect(shelf).toEqual([])
		}
		if (!isHeld(gate, 'purchase')) return
		for (const { seek, avoid, settled, means, ownedPair, insideLengthMm } of pairs) {
			expect([seek, avoid, settled, means, insideLengthMm]).toEqual([[], [], [], 'keep', undefined])
			expect(ownedPair).toBeDefined()
		}
		const told = ['footwear.sensation', 'footwear.skin-at-risk']
		expect(
			room.findings.filter(({ id }) => !id.startsWith('footwear.pair-') && !told.includes(id)),
		).toEqual([])
	}))
it('no model with a stud under a joint at risk stands before one that is clear', () =>
	each(({ footwear: { ranked }, prescription: { pairs } }) => {
		const isUnder = (id: string): boolean => {
			const { studs } = ranked.find((model) => model.id === id) ?? {}
			return [...(studs?.left ?? []), ...(studs?.right ?? [])].some(
				({ under, atRisk }) => under.length > 0 && atRisk.length > 0,
			)
		}
		const suitable = ranked.filter(({ verdict }) => verdict !== 'unsuitable').map(({ id }) => id)
		for (const models of [suitable, ...pairs.map(({ shelf }) => shelf)]) {
			const under = models.map(isUnder)
			expect(under.lastIndexOf(false)).toBeLessThan(
				under.includes(true) ? under.indexOf(true) : Infinity,
			)
		}
	}))
it('a pair that hurts serves no role, and one pair or one at a time is one purchase', () =>
	each(({ prescription: { pairs } }, visit) => {
		for (const { ownedPair } of pairs)
			expect(visit.footwear?.find(({ id }) => id === ownedPair)?.hurts).not.toBe(true)
		if (visit.means === 'one-pair' || visit.means === 'one-at-a-time')
			expect(pairs.filter(({ means }) => means === 'buy').length).toBeLessThanOrEqual(1)
	}))
it('wishes are settled alike whatever their order, and what stands first in the order stands', () =>
	each(({ footwear: { target } }) => {
		const stands = settle(target.seek, target.avoid)
		const turned = settle(target.seek.toReversed(), target.avoid.toReversed())
		for (const { params } of stands.settled) {
			const [rank, over] = [params.rank, params.overRank].map((at) =>
				settlingOrder.indexOf(at as (typeof settlingOrder)[number]),
			)
			expect(over!).toBeLessThanOrEqual(rank!)
		}
		// only what weighs alike may turn
		if (stands.settled.every(({ params }) => params.by !== 'order'))
			expect(new Set(turned.seek.map(({ feature }) => feature))).toEqual(
				new Set(stands.seek.map(({ feature }) => feature)),
			)
	}))
