/** An insert is worn in every boot of a player: what one model's liner gives back is not theirs. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { assessed } from './laws/case.ts'

const heights = (footwear: object[], massKg: number): number[] => {
	const visit: Visit = visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		visitDate: '2026-09-01',
		player: { givenName: 'A', familyName: 'B', birthDate: '2013-01-01', sex: 'male' },
		feet: { left: { heelToToeMm: 250, ballWidthMm: 98 }, right: { heelToToeMm: 250 } },
		play: { code: 'association', surfaces: ['natural-firm'], matchesPerWeek: 1 },
		conditions: [
			{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' },
			{ condition: 'cavus-foot-pain', side: 'left', status: 'current' },
			// no raise for the heel, so that nothing makes way for one
			{ condition: 'posterior-ankle-impingement', side: 'left', status: 'current' },
		],
		posture: {
			left: {
				fpi6: [-1, -1, -1, -1, -1, -1],
				forefoot: 'valgus-flexible',
				supinationResistance: 'high',
			},
		},
		body: { massKg },
		footwear,
	})
	const { raise } = assessed(visit).prescription
	return raise.pairs
		.filter(({ pair }) => pair === 'boot' || pair === 'role.match')
		.map(({ left }) => left.addedUnderHeelMm)
}
it('no boot that is owned holds more than 6 mm, whatever comes out of a model', () => {
	const boot = { id: 'boot', sole: 'firm-ground', heelToForefootOffsetMm: 0, insideLengthMm: 264 }
	fc.assert(
		fc.property(fc.integer({ min: 30, max: 140 }), (massKg) => {
			expect(Math.max(...heights([boot], massKg))).toBeLessThanOrEqual(6)
		}),
		{ numRuns: 20 },
	)
	// without one, the liner of the model gives its room
	expect(Math.max(...heights([], 80))).toBeGreaterThan(6)
})
