/** The ankles of children and of limbs that are not to be tested. */
import { describe, expect, it } from 'vitest'
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Gate } from '../../shared/engine/findings/assessment.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { ids, of, protocol } from './ankle-visit.ts'

const born = (birthDate: string): Pick<Visit, 'player'> => ({
	player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' },
})
/**
 * A pair of readings made with the geometry of the lunge (clinical.md 1.4: ankle to toe 0.75 of the
 * foot, front of knee 5 of 43 cm of lower leg), all of it in proportion to a lower leg of 0.25 of
 * stature (J Korean Acad Rehabil Med 2004;28:458, 5 to 20 years, abstract read).
 */
function pairAt(statureCm: number, footMm: number, lungeCm: number) {
	const shankCm = 0.25 * statureCm
	const reach = lungeCm + 0.075 * footMm - 5 * (shankCm / 43)
	return (Math.asin(reach / shankCm) * 180) / Math.PI
}
describe('a child', () => {
	// Median statures and foot lengths near these ages; with an adult lower leg of 43 cm every one of
	// these pairs was doubted.
	it.each([
		['2020-03-01', 116, 182],
		['2019-03-01', 122, 190],
		['2018-03-01', 128, 198],
		['2017-03-01', 133, 206],
		['2015-03-01', 143, 222],
	])('born %s, %i cm: readings of one geometry fit each other', (birthDate, statureCm, footMm) => {
		for (const lungeCm of [3, 5, 7, 9]) {
			const lungeDeg = Math.round(pairAt(statureCm, footMm, lungeCm))
			const foot = { heelToToeMm: footMm }
			const made = of(
				{ left: { lungeCm, lungeDeg } },
				{ ...born(birthDate), body: { statureCm }, feet: { left: foot, right: foot } },
			)
			expect(ids(made), `${lungeCm} cm, ${lungeDeg} deg`).not.toContain('ankle.pair.left')
		}
	})
	it('readings that do not fit are still doubted', () =>
		expect(
			ids(
				of(
					{ left: { lungeCm: 5, lungeDeg: 50 } },
					{ ...born('2019-03-01'), body: { statureCm: 122 } },
				),
			),
		).toContain('ankle.pair.left'))
	it('without a stature no pair of a minor is doubted', () =>
		expect(ids(of({ left: { lungeCm: 5, lungeDeg: 50 } }, born('2019-03-01')))).not.toContain(
			'ankle.pair.left',
		))
	// 9 cm is an adult's. In proportion to the lower leg of a boy of 122 cm (30.5 against 43 cm) it is
	// 9 x 30.5 / 43 = 6.4 cm: his 8 cm are about 39 degrees and not restricted.
	it.each([
		[8, 'adequate'],
		[6.5, 'adequate'],
		[6.3, 'restricted'],
	])('of 122 cm with %f cm is %s', (lungeCm, band) => {
		const made = of({ left: { lungeCm } }, { ...born('2019-03-01'), body: { statureCm: 122 } })
		expect(made.left).toMatchObject({ band, bandBy: 'distance-for-stature' })
		expect(made.heelRaiseMm === undefined).toBe(band === 'adequate')
	})
	it('whose stature is not known is judged by the angle alone', () => {
		const made = of({ left: { lungeCm: 8 }, right: { lungeDeg: 30 } }, born('2019-03-01'))
		expect([made.left.band, made.right.band]).toEqual(['unknown', 'restricted'])
		expect(ids(made)).toContain('ankle.distance-of-minor.left')
		expect(made.heelRaiseMm).toEqual({ left: 4, right: 4 })
	})
	it('of 18 years is held to the cut-off as it stands', () =>
		expect(of({ left: { lungeCm: 8.9 } }, born('2008-08-31')).left).toMatchObject({
			band: 'restricted',
			bandBy: 'distance',
		}))
})
describe('a limb that is not to be tested', () => {
	const visit: Visit = {
		format: 'lastwright-visit',
		version: 1,
		visitDate: '2026-09-01',
		...born('1998-01-01'),
		ankles: {
			left: { lungeDeg: 20, lungeCm: 3, endFeel: 'front-pinch' },
			right: { lungeDeg: 40, lungeCm: 11 },
		},
	}
	const earlier: Visit = {
		...visit,
		visitDate: '2026-03-01',
		ankles: { left: { lungeDeg: 40, lungeCm: 11 }, right: { lungeDeg: 40, lungeCm: 11 } },
	}
	const held = (what: 'test'): Gate => ({
		...openGate,
		left: {
			...openGate.left,
			state: 'held',
			holds: [{ what, rule: 'x', until: 'imaging-result', since: visit.visitDate }],
		},
	})
	const limb = { footAtRisk: [], acute: [], jointsAtRisk: [], unclearedSurgery: false }
	const injured = {
		left: { ...limb, acute: [{ measure: 'daysAgo', value: 1 }] },
		right: limb,
	}
	it.each([
		['held', { gate: held('test') }],
		['acutely injured', { facts: injured }],
	])('%s: recorded, and compared with nothing', (_, limbs) => {
		const made = ankle(visit, [earlier], protocol, limbs)
		expect(made.left).toMatchObject({ lungeDeg: 20, band: 'unknown', limitedBy: 'unknown' })
		expect(made.asymmetry).toBe('unknown')
		expect(made.asymmetryDeg).toBeUndefined()
		expect(made.changes.left).toEqual({})
		expect(made.heelRaiseMm).toBeUndefined()
		expect(made.findings.map(({ id }) => id)).toEqual(['ankle.recorded-only.left'])
	})
	// Ottawa met on day 1 of an injury (flags-load.md): no raise, no advice to treat the stiffer side.
	it('an ankle that may be broken gives no raise and no difference', () => {
		const made = assess({
			...visit,
			screening: {
				injury: {
					side: 'left',
					daysAgo: 1,
					malleolarZonePain: true,
					unableToBearWeightThen: true,
					unableToBearWeightNow: true,
				},
			},
		})
		expect(made.ankle.asymmetry).toBe('unknown')
		expect(made.ankle.heelRaiseMm).toBeUndefined()
		expect(made.findings.filter(({ topic }) => topic === 'raise')).toEqual([])
	})
})
