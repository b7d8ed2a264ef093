/** Hours of a young player, and the force of landing. */
import { expect, it } from 'vitest'
import { openGate } from '../../shared/engine/facts/held.ts'
import { loading } from '../../shared/engine/loading/loading.ts'
import { protocol, visit } from './screened-visit.ts'

// Jayanthi 2015: strictly more hours than years; strictly more than 2 to 1.
it.each([
	[14, 14, 'hours'],
	[13, 13, ''],
	[12, 6, ''],
	[12, 5, 'ratio'],
	[12, 0, 'ratio'],
])('youth load: %i h, free %i', (organisedHoursPerWeek, freePlayHoursPerWeek, flag) => {
	const ids = loading(
		visit({}, '2014-01-20', { organisedHoursPerWeek, freePlayHoursPerWeek }),
		protocol,
		openGate,
	).findings.map((finding) => finding.id)
	expect([
		ids.includes('loading.hours-over-age'),
		ids.includes('loading.organised-to-free'),
	]).toEqual([flag === 'hours', flag === 'ratio'])
})
it('95 kg at 2.5 body weights is 2329.9 N, the middle of the span', () => {
	const force = loading(visit({}, '2000-01-01', undefined, 95), protocol, openGate).peakForceN!
	expect((force.lowN + force.highN) / 2).toBeCloseTo(2329.9, 1)
})
