/** Heel rises and change since the last visit. */
import { describe, expect, it } from 'vitest'
import { posture } from '../../shared/engine/posture/posture.ts'
import { ids, items, raw, visit } from './posture-visit.ts'

describe('heel rises', () => {
	// Hébert-Losier 2017 Physiotherapy 103:446 (n 566), by decade from 20-29 (clinical.md 3.4). Under
	// 20 and from 80: none found.
	it.each([
		['male', [37, 32, 28, 23, 19, 14]],
		['female', [30, 27, 24, 21, 19, 16]],
	] as const)('%s', (sex, norms) =>
		norms.forEach((norm, i) => {
			for (const age of [20 + 10 * i, 29 + 10 * i]) {
				const of = (heelRises: number) =>
					ids(visit({ left: { heelRises } }, { sex, born: `${2026 - age}-01-01` }))
				expect(of(norm), `${age} y, ${norm}`).not.toContain('posture.heel-rises.left')
				expect(of(norm - 1), `${age} y, ${norm - 1}`).toContain('posture.heel-rises.left')
			}
		}),
	)
	it.each(['2007-01-01', '1946-01-01'])('no figure for a player born %s', (born) =>
		expect(ids(visit({ left: { heelRises: 1 } }, { born }))).not.toContain(
			'posture.heel-rises.left',
		),
	)
	// Side gap under 10 % is practice (clinical.md 3.4).
	it.each([
		[20, 18, true],
		[20, 19, false],
		[0, 0, false],
		[0, 1, true],
	])('%i and %i', (left, right, differs) =>
		expect(
			ids(visit({ left: { heelRises: left }, right: { heelRises: right } })).includes(
				'posture.heel-rise-gap.both',
			),
		).toBe(differs),
	)
	it('spells its source', () =>
		expect(raw.row('posture.riseMen20').source).toContain('Hébert-Losier'))
})
// Hébert-Losier 2017: day-to-day limits -6.2 to +6.5; 24 to 30 is within, 31 beyond (clinical.md
// 3.4, 9 row 22).
it.each([
	[30, 'within-error'],
	[31, 'real'],
	[18, 'within-error'],
	[17, 'real'],
])('heel rises 24 then %i: %s', (now, verdict) => {
	const result = posture(
		visit({ left: { heelRises: now } }),
		[{ ...visit({ left: { heelRises: 24 } }), visitDate: '2026-03-01' }],
		raw,
	)
	expect(result.changes.left.heelRises?.verdict).toBe(verdict)
	expect(result.findings.some((finding) => finding.id === 'posture.heel-rise-change.left')).toBe(
		verdict === 'real',
	)
})
it('an index has no published smallest change and is never called changed', () =>
	expect(
		posture(
			visit({ left: { fpi6: items(12) } }),
			[{ ...visit({ left: { fpi6: items(-12) } }), visitDate: '2026-03-01' }],
			raw,
		).changes.left.fpi?.verdict,
	).toBe('cannot-compare'))
