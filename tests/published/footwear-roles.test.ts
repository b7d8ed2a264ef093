/**
 * The pair of each role, of known feet and shelves: what a sports podiatrist would expect. Common
 * practice, no source, unless named.
 */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment, RolePair } from '../../shared/engine/findings/assessment.ts'
import { shippedProtocol } from '../../shared/engine/protocol/protocol.ts'
import type { Model, Shelf } from '../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { modelWith, shelfOf, sizeOf, studAt, visitWith } from './known-shelf.ts'

const planOf = (visit: Visit, shelf?: Shelf): Assessment =>
	assess(visit, [], shippedProtocol, shelf)
describe('the pair of a role', () => {
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
	it('of purchases one at a time the most dangerous comes first, then the match', () => {
		const bought = (pairs: Visit['footwear']) =>
			pairsOf({
				play: { surfaces: ['natural-firm', 'road'] },
				means: 'one-at-a-time',
				footwear: pairs,
			})
				.filter(({ means }) => means === 'buy')
				.map(({ role }) => role)
		expect(bought([])).toEqual(['match'])
		// the toes touch the end: not to be worn at all
		const short = {
			id: 'r',
			sole: 'road' as const,
			roles: ['running' as const],
			insideLengthMm: 255,
		}
		expect(bought([short])).toEqual(['running'])
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
	it('with a joint at risk the boot with a stud under it stands behind one that is clear', () => {
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
