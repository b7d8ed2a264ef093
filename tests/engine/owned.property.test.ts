/** Verdicts on owned pairs over random visits. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { isMinor } from '../../shared/engine/facts/age.ts'
import { shoeKindOf, soreNails, toeRoomBand } from '../../shared/engine/facts/toe-room.ts'
import { pairPicture } from '../../shared/engine/footwear/pair/of-player.ts'
import { groundsOf, verdictOf } from '../../shared/engine/footwear/pair/verdict.ts'
import { judgedPair } from '../../shared/engine/footwear/pairs.ts'
import { growth } from '../../shared/engine/growth/growth.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import { damages, ownedVerdicts } from '../../shared/engine/visit/terms.ts'
import type { Pair, Visit } from '../../shared/engine/visit/visit.ts'
import { swapSaid, swapVisit } from './mirror.ts'
import { conditions, feet, footwear, numbers, player, validVisit } from './random-visit.ts'

const protocol = openProtocol()
const visits = validVisit({ player, feet, footwear, conditions })
/** Pairs about as long as the feet, with no more than a complaint. */
const near = validVisit({
	player,
	conditions,
	feet: fc.record({
		left: fc.record({
			heelToToeMm: fc.integer({ min: 2500, max: 2600 }).map((tenths) => tenths / 10),
			heelToBallMm: fc.integer({ min: 180, max: 198 }),
		}),
		sockMm: fc.constantFrom(0, 2),
	}),
	footwear: fc
		.record(
			{
				id: fc.constant('p1'),
				insideLengthMm: fc.integer({ min: 2500, max: 2800 }).map((tenths) => tenths / 10),
				sole: fc.constantFrom('firm-ground' as const, 'road' as const),
				brokenIn: fc.boolean(),
				comfort: fc.integer({ min: 0, max: 10 }),
			},
			{ requiredKeys: ['id', 'insideLengthMm', 'sole'] },
		)
		.map((pair) => [pair]),
})
function pictureFor(visit: Visit) {
	const sized = sizing(visit, [], protocol)
	const grown = growth(visit, [], protocol, sized.fitLengthMm)
	return { sized, picture: pairPicture(visit, { sizing: sized, growth: grown }, protocol) }
}
function verdictsOf(visit: Visit) {
	const { picture } = pictureFor(visit)
	return (visit.footwear ?? []).map((pair) =>
		verdictOf(groundsOf(pair, picture, protocol), picture),
	)
}
const gravity = ['keep', 'training-only', 'modify', 'replace', 'stop-wearing'] as const

/** Measured pairs that are kept or train only, with the inside length that the player is told. */
function keptPairs(visit: Visit) {
	const { sized } = pictureFor(visit)
	const verdicts = verdictsOf(visit)
	return (visit.footwear ?? []).flatMap((pair, at) => {
		const told = shoeKindOf(pair) === 'trainers' ? sized.trainers : sized
		const isKept = ['keep', 'training-only'].includes(verdicts[at]!.verdict)
		if (!isKept || pair.insideLengthMm === undefined || !told?.insideLengthMm) return []
		return [{ insideMm: pair.insideLengthMm, ...told.insideLengthMm }]
	})
}
it('a measured pair that is kept lies within measuring error of the band that is told', () => {
	let kept = 0
	// the lengths told are rounded to a tenth
	const rounding = 0.051
	const error = protocol.value('sizing.bandErrorMm') + rounding
	fc.assert(
		fc.property(fc.oneof(visits, near), (visit) => {
			const below = soreNails(visit).length > 0 ? rounding : error
			for (const { insideMm, min, max } of keptPairs(visit)) {
				kept++
				expect(insideMm).toBeGreaterThanOrEqual(min - below)
				expect(insideMm).toBeLessThanOrEqual(max + error)
			}
		}),
	)
	expect(kept).toBeGreaterThan(0)
})
it('the band told is the band that pairs are held against', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			const { sized, picture } = pictureFor(visit)
			if (!sized.toeRoomMm) return
			const whose = { adult: !isMinor(visit, protocol), nailsAreSore: soreNails(visit).length > 0 }
			expect(picture.bands.boots.span).toEqual(sized.toeRoomMm)
			expect(picture.bands.trainers.span).toEqual(sized.trainers!.toeRoomMm)
			expect(toeRoomBand('boots', whose, protocol).span).toEqual(sized.toeRoomMm)
		}),
	)
})
it('swapped feet, the same verdicts', () => {
	fc.assert(
		fc.property(visits, (visit) => {
			expect(swapSaid(verdictsOf(swapVisit(visit)))).toEqual(verdictsOf(visit))
		}),
	)
})
const worse: fc.Arbitrary<(pair: Pair) => Pair> = fc.oneof(
	fc
		.constantFrom(...damages)
		.map((sign) => (pair: Pair) => ({ ...pair, damage: [...(pair.damage ?? []), sign] })),
	fc.constant((pair: Pair) => ({ ...pair, hurts: true })),
	fc.constant((pair: Pair) => ({ ...pair, comfort: 0 })),
	fc.constant((pair: Pair) => ({ ...pair, minutesWorn: 200_000 })),
)
it('every verdict has its place from the mildest to the gravest', () =>
	expect([...gravity].sort()).toEqual([...ownedVerdicts].sort()))
it('more damage, hurt or wear never makes a verdict gentler', () => {
	fc.assert(
		fc.property(visits, worse, (visit, spoil) => {
			const after = verdictsOf({ ...visit, footwear: (visit.footwear ?? []).map(spoil) })
			for (const [at, { verdict }] of verdictsOf(visit).entries())
				expect(gravity.indexOf(after[at]!.verdict)).toBeGreaterThanOrEqual(gravity.indexOf(verdict))
		}),
	)
})
it('outside callers get the same verdict in their words, and every number is one', () => {
	const words = {
		keep: ['keep', 'unknown'],
		'training-only': ['keep', 'unknown'],
		modify: ['change'],
		replace: ['replace'],
		'stop-wearing': ['replace'],
	}
	fc.assert(
		fc.property(visits, (visit) => {
			const { picture } = pictureFor(visit)
			for (const [at, { verdict, by }] of verdictsOf(visit).entries()) {
				const current = judgedPair(visit.footwear![at]!, picture, protocol)
				expect(words[verdict]).toContain(current.verdict)
				expect(numbers(current).every(Number.isFinite)).toBe(true)
				expect(verdict === 'replace').toBe(by !== undefined)
			}
		}),
	)
})
