/** Heel rises and change since the last visit. */
import { describe, expect, it } from 'vitest'
import { posture } from '../../shared/engine/posture/posture.ts'
import { holding } from '../engine/raise-visit.ts'
import { ids, items, raw, visit } from './posture-visit.ts'

describe('heel rises', () => {
	// Hébert-Losier 2017 Physiotherapy 103:446 (n 566), medians by decade from 20-29 (clinical.md
	// 3.4); under 20 and from 80 none found. Half of healthy people lie below a median: it is said
	// below half of it, and only beyond the error of 6.5 rises between days (the same study).
	it.each([
		['male', [37, 32, 28, 23, 19, 14]],
		['female', [30, 27, 24, 21, 19, 16]],
	] as const)('%s', (sex, norms) =>
		norms.forEach((norm, i) => {
			for (const age of [20 + 10 * i, 29 + 10 * i]) {
				const of = (heelRises: number) =>
					ids(visit({ left: { heelRises } }, { sex, born: `${2026 - age}-01-01` }))
				const half = Math.ceil(norm / 2)
				for (const enough of [norm, norm - 1, half])
					expect(of(enough), `${age} y, ${enough}`).not.toContain('posture.heel-rises.left')
				expect(of(half - 1), `${age} y, ${half - 1}`).toContain('posture.heel-rises.left')
			}
		}),
	)
	it.each(['2007-01-01', '1946-01-01'])('no figure for a player born %s', (born) =>
		expect(ids(visit({ left: { heelRises: 1 } }, { born }))).not.toContain(
			'posture.heel-rises.left',
		),
	)
	// Side gap under 10 % is practice, and fewer than 7 rises are within the error between days,
	// -6.2 to +6.5 (Hébert-Losier 2017; clinical.md 3.4).
	it.each([
		[20, 18, false],
		[20, 23, false],
		[24, 18, false],
		[25, 18, true],
		[0, 0, false],
		[0, 7, true],
		[80, 73, false],
	])('%i and %i', (left, right, differs) =>
		expect(
			ids(visit({ left: { heelRises: left }, right: { heelRises: right } })).includes(
				'posture.heel-rise-gap.both',
			),
		).toBe(differs),
	)
	// PMID 17613455 (abstract read), n 95, 7 to 9 years: 36 with a standard deviation of 18; those with
	// 13 or fewer repeat the test at a later date.
	it.each([
		['2019-09-01', 13, true],
		['2019-09-01', 14, false],
		['2016-09-02', 13, true],
		['2016-09-01', 13, false],
		['2019-09-02', 13, false],
	])('born %s, %i rises: test again %s', (born, heelRises, again) =>
		expect(
			ids(visit({ left: { heelRises } }, { born })).includes('posture.heel-rises-again.left'),
		).toBe(again),
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
describe('a limb that is not to be tested', () => {
	const recorded = visit({
		left: { heelRises: 2, jackTestDeg: 5, firstMtpDegNonWeightBearing: 70 },
		right: { heelRises: 30, jackTestDeg: 5, firstMtpDegNonWeightBearing: 70 },
	})
	const earlier = { ...recorded, visitDate: '2026-03-01', posture: { left: { heelRises: 30 } } }
	const result = posture(recorded, [earlier], raw, { gate: holding('test', 'left') })
	it('keeps its heel rises and compares them with nothing', () => {
		expect(result.left.heelRises).toBe(2)
		expect(result.changes.left.heelRises).toBeUndefined()
		expect(result.findings.map(({ id }) => id).sort()).toEqual([
			'posture.first-mtp.right',
			'posture.recorded-only.left',
		])
	})
	it('has no verdict by the standing toe test', () =>
		expect([result.left.firstMtp, result.right.firstMtp]).toEqual([undefined, 'functional-limit']))
	it('is compared where nothing is held', () =>
		expect(
			posture(recorded, [earlier], raw, {})
				.findings.map(({ id }) => id)
				.filter((id) => id.startsWith('posture.heel-rise')),
		).toEqual([
			'posture.heel-rises.left',
			'posture.heel-rise-gap.both',
			'posture.heel-rise-change.left',
		]))
})
