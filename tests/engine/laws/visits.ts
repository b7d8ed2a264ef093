/** The visits that the laws of the plan are tried on: ill and well, owners of pairs that nearly fit. */
import fc from 'fast-check'
import { surfaces } from '../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import {
	ankles,
	body,
	conditions,
	feet,
	footwear,
	player,
	postures,
	screening,
	validVisit,
	wholeVisit,
} from '../random-visit.ts'

const play = fc.record({
	surfaces: fc.uniqueArray(fc.constantFrom(...surfaces), { maxLength: 4 }),
	matchesPerWeek: fc.integer({ min: 0, max: 2 }),
	trainingsPerWeek: fc.integer({ min: 0, max: 4 }),
})
const tenths = (min: number, max: number) =>
	fc.integer({ min: min * 10, max: max * 10 }).map((value) => value / 10)
/** No warning sign: something may be bought, raised and made. */
const well = validVisit({
	player,
	feet,
	ankles,
	posture: postures,
	body,
	conditions,
	footwear,
	play,
	means: fc.constantFrom('one-pair', 'one-at-a-time', 'free'),
	complaint: fc.constant('sore heel'),
})
/** Pairs about as long as the feet, so that some are kept. */
const fitting = validVisit({
	player,
	ankles,
	conditions,
	play,
	feet: fc.record({
		left: fc.record({ heelToToeMm: tenths(248, 252), heelToBallMm: tenths(178, 186) }),
		right: fc.record({ heelToToeMm: tenths(248, 252) }),
		sockMm: fc.constantFrom(0, 2),
	}),
	footwear: fc
		.record(
			{
				insideLengthMm: tenths(254, 270),
				sole: fc.constantFrom('firm-ground' as const, 'road' as const),
				heelToForefootOffsetMm: fc.integer({ min: 0, max: 12 }),
				comfort: fc.integer({ min: 0, max: 10 }),
			},
			{ requiredKeys: ['insideLengthMm', 'sole'] },
		)
		.map((pair) => [{ id: 'p1', ...pair }]),
	screening: fc.oneof(fc.constant({}), screening),
})
const visits = fc.oneof(wholeVisit, well, fitting)

export interface Drawn {
	visit: Visit
	earlier: Visit[]
}
/** The same player, seen before: holds are carried, and what did not change is known. */
const asBefore = (visit: Visit, before: Visit): Visit => ({
	...before,
	player: visit.player,
	visitDate: '2026-03-01',
})
export const drawnVisits: fc.Arbitrary<Drawn> = fc
	.tuple(visits, fc.option(visits, { nil: undefined }), fc.boolean())
	.map(([visit, before, isSame]) => ({
		visit,
		earlier: before === undefined ? [] : [asBefore(visit, isSame ? visit : before)],
	}))
