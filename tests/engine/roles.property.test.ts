/**
 * What the pairs of each role keep, over random visits and shelves: no wish against itself, nothing
 * where nothing may be bought, no stud under a joint at risk before a clear one. Own properties, no
 * source.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import type { Assessment, RolePair } from '../../shared/engine/findings/assessment.ts'
import { opposites } from '../../shared/engine/footwear/opposites.table.ts'
import { roleRows } from '../../shared/engine/footwear/roles.table.ts'
import { settle } from '../../shared/engine/footwear/settle.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import { settlingOrder } from '../../shared/engine/protocol/settling.table.ts'
import type { Model, Shelf } from '../../shared/engine/visit/shelf.ts'
import { type Feature, surfaces } from '../../shared/engine/visit/terms.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelWith, shelfOf, sizeOf, studAt, visitWith } from '../published/known-shelf.ts'
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

const shelves = fc
	.uniqueArray(modelOf, { selector: (model: Model) => model.id, maxLength: 8 })
	.map((models): Shelf => ({ format: 'lastwright-shelf', version: 1, models }))
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
	.sample(fc.tuple(visits, shelves), 160)
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
				expect((params['way'] === 'seek' ? seek : avoid).includes(feature)).toBe(false)
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
			const [rank, over] = [params['rank'], params['overRank']].map((at) =>
				settlingOrder.indexOf(at as (typeof settlingOrder)[number]),
			)
			expect(over!).toBeLessThanOrEqual(rank!)
		}
		// only what weighs alike may turn
		if (stands.settled.every(({ params }) => params['by'] !== 'order'))
			expect(new Set(turned.seek.map(({ feature }) => feature))).toEqual(
				new Set(stands.seek.map(({ feature }) => feature)),
			)
	}))

describe('of known visits', () => {
	const pairsOf = (more: Partial<Visit>, ...models: Model[]): RolePair[] =>
		planOf(visitWith(more), models.length > 0 ? shelfOf(...models) : undefined).prescription.pairs
	const matchOf = (more: Partial<Visit>, ...models: Model[]) =>
		pairsOf(more, ...models).filter(({ role }) => role === 'match')
	const boot = { id: 'b', name: 'Boots', sole: 'firm-ground' as const, insideLengthMm: 267.5 }
	const firm: Visit['play'] = { surfaces: ['natural-firm'] }
	it('a healthy player whose boots fit keeps them: nothing needs to change', () => {
		const [match] = matchOf({ play: firm, footwear: [boot] }, modelWith())
		expect([match!.means, match!.ownedPair, match!.shelf]).toEqual(['keep', 'b', []])
	})
	it('boots that hurt are replaced, and not by the same model', () => {
		const [match] = matchOf(
			{ play: firm, footwear: [{ ...boot, hurts: true }] },
			modelWith({ id: 'same', name: 'boots' }),
			modelWith({ id: 'other', name: 'Other' }),
		)
		expect([match!.means, match!.ownedPair, match!.shelf]).toEqual(['buy', undefined, ['other']])
	})
	it('grounds that no sole serves need a pair each; with means for one, a compromise is named', () => {
		const play: Visit['play'] = { surfaces: ['natural-soft', 'artificial-3g'] }
		expect(matchOf({ play }).map(({ id, sole, surfaces: on }) => [id, sole, on])).toEqual([
			['match', 'soft-ground', ['natural-soft']],
			['match.2', 'artificial-ground', ['artificial-3g']],
		])
		const [only, ...more] = matchOf({ play, means: 'one-pair' })
		expect(more).toEqual([])
		expect(only!.settled.map(({ over }) => over)).toContain('ground')
	})
	it('several grounds of one sole ask for one pair, without a word', () => {
		const [match, ...more] = matchOf({ play: { surfaces: ['natural-firm', 'hybrid'] } })
		expect([match!.sole, match!.settled, more]).toEqual(['firm-ground', [], []])
	})
	it('with an ACL injury before, soft ground is played in the sole that lets the foot turn', () => {
		const [match] = matchOf({
			play: { surfaces: ['natural-soft'] },
			conditions: [{ condition: 'acl-history', side: 'left', status: 'past' }],
		})
		expect(match!.sole).toBe('firm-ground')
		expect(match!.settled.map(({ code }) => code)).toContain('settled.sole-left')
	})
	it('the boot that must not be worn comes before the match boot that is only worn out', () => {
		const bought = (more: Partial<Visit>) =>
			pairsOf({ play: { surfaces: ['natural-firm', 'road'] }, means: 'one-at-a-time', ...more })
				.filter(({ means }) => means === 'buy')
				.map(({ role }) => role)
		expect(bought({ footwear: [] })).toEqual(['match'])
	})
	it('no role but match and training is asked about studs', () => {
		const pairs = pairsOf({
			player: { givenName: 'A', familyName: 'B', birthDate: '2014-01-01', sex: 'female' },
			play: { surfaces: ['natural-firm', 'road'] },
			conditions: [{ condition: 'plantar-heel-pain', side: 'left', status: 'current' }],
		})
		expect(pairs.some(({ role }) => role === 'match')).toBe(true)
		for (const { role, seek, avoid } of pairs)
			if (role === 'running' || role === 'everyday')
				expect([...seek, ...avoid].filter((feature) => /stud|grip|-sole/.test(feature))).toEqual([])
	})
	it('a sesamoid that is suspected counts: the boot with a moulded stud there stands behind', () => {
		const under = modelWith({ id: 'a', sizes: [sizeOf(8, 267)], studs: [studAt(0.71, -0.65)] })
		const clear = modelWith({ id: 'z', sizes: [sizeOf(8, 271)], studs: [studAt(0.3, 0.5)] })
		const ranked = assess(
			visitWith({ posture: { left: { firstRay: 'plantarflexed' } }, play: firm }),
			[],
			shippedProtocol,
			shelfOf(under, clear),
		).footwear.ranked
		// by points alone the one under the joint would be first: it fits to the mm
		expect(ranked.map(({ id }) => id)).toEqual(['z', 'a'])
	})
	it('a foot at risk by answers alone is asked for soft depth, and nothing is bought', () => {
		const { footwear: room, prescription } = planOf(
			visitWith({ screening: { reducedSensation: true }, play: firm }),
			shelfOf(modelWith()),
		)
		expect(room.target.seek.map(({ rule }) => rule)).toContain('sensation')
		expect([room.ranked, prescription.pairs.flatMap(({ shelf }) => shelf)]).toEqual([[], []])
	})
	// soft-ground studs of 12 to 19 mm: retail guide, quoted in the protocol
	it.each([
		[11.9, 'natural-firm', true],
		[16, 'natural-firm', false],
		[16, 'natural-hard', false],
	] as const)('a firm-ground boot with studs of %f mm suits %s: %s', (heightMm, ground, suits) => {
		const [model] = assess(
			visitWith({ play: { surfaces: [ground] } }),
			[],
			shippedProtocol,
			shelfOf(modelWith({ studs: [studAt(0.3, 0.5, { heightMm, removable: true })] })),
		).footwear.ranked
		expect(model!.for.some(({ rule }) => rule === 'surface-fit')).toBe(suits)
		if (ground === 'natural-hard') expect(model!.verdict).toBe('unsuitable')
	})
	it('a trail shoe is not for matches, nor for a prop on soft ground', () => {
		const play: Visit['play'] = {
			code: 'rugby-union',
			position: 'prop',
			surfaces: ['natural-soft'],
		}
		const trail = modelWith({ id: 't', sole: 'trail', sizes: [sizeOf(8, 274)] })
		expect(matchOf({ play }, trail)[0]!.shelf).toEqual([])
		const [model] = assess(visitWith({ play }), [], shippedProtocol, shelfOf(trail)).footwear.ranked
		expect(model!.stops.map(({ code }) => code)).toEqual(['match.sole-scrum'])
	})
	it('no boot is praised or blamed for one of two soles that are both sought', () => {
		const [model] = assess(
			visitWith({ play: { surfaces: ['natural-firm', 'artificial-3g'] } }),
			[],
			shippedProtocol,
			shelfOf(modelWith()),
		).footwear.ranked
		expect([...model!.for, ...model!.against].filter(({ rule }) => /-sole$/.test(rule))).toEqual([])
	})
})
