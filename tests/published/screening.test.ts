/** Ottawa truth table (Stiell 1993) and Wells two-level score (Wells 2003, NICE NG158). */
import { describe, expect, it } from 'vitest'
import { loading } from '../../shared/loading/loading.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import { filmNeeded } from '../../shared/screening/ottawa.ts'
import { screening } from '../../shared/screening/screening.ts'
import type { Screening, Visit } from '../../shared/visit/visit.ts'

const protocol = openProtocol()
const visit = (answers: Screening, birthDate = '2000-01-01', play?: Visit['play'], massKg?: number): Visit => ({ format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate, sex: 'male' }, visitDate: '2027-01-20', screening: answers, ...(play ? { play } : {}), ...(massKg ? { body: { massKg } } : {}) })

describe('Ottawa', () => {
	it.each([[0, 1, 1, 1, 'not-met'], [1, 0, 0, 0, 'not-met'], [1, 1, 0, 0, 'met'], [1, 0, 1, 1, 'met'], [1, 0, 1, 0, 'not-met'], [1, 0, 0, 1, 'not-met'], [1, 1, 1, 1, 'met']] as const)('P%i T%i I%i N%i', (p, t, i, n, state) => expect(filmNeeded(p === 1, t === 1, i === 1, n === 1)).toBe(state))
	it('a missing answer is never no', () => expect([filmNeeded(true, undefined, false, false), filmNeeded(undefined, true, false, false), filmNeeded(true, true, undefined, undefined)]).toEqual(['incomplete', 'incomplete', 'met']))
	const quiet = { side: 'left', daysAgo: 2, malleolarZonePain: true, midfootZonePain: false, tenderLateralMalleolus: false, tenderMedialMalleolus: false, tenderNavicular: false, tenderFifthMetatarsalBase: false, unableToBearWeightThen: false, unableToBearWeightNow: false } as const
	it('met is same-day, newly unable is imaging, quiet proceeds', () => {
		expect(screening(visit({ injury: { ...quiet, tenderLateralMalleolus: true } }), protocol)).toMatchObject({ action: 'same-day', ottawa: { left: { ankle: 'met', foot: 'not-met' } } })
		expect(screening(visit({ injury: { ...quiet, unableToBearWeightNow: true } }), protocol)).toMatchObject({ action: 'imaging', ottawa: { left: { ankle: 'not-met' } } })
		expect(screening(visit({ injury: quiet }), protocol).action).toBe('proceed')
	})
	it.each([[{ daysAgo: 11 }, '2000-01-01'], [{ pregnant: true }, '2000-01-01'], [{ cannotBeAssessed: true }, '2000-01-01'], [{}, '2022-01-01']])('not applicable %o', (more, birth) => expect(screening(visit({ injury: { ...quiet, ...more } }, birth), protocol)).toMatchObject({ action: 'same-day', ottawa: { left: { ankle: 'not-applicable', foot: 'not-applicable' } } }))
})
describe('Wells', () => {
	const all = { activeCancer: true, paralysisOrCast: true, bedriddenOrSurgery: true, deepVeinTenderness: true, entireLegSwollen: true, calfDifferenceCm: 3, pittingOedema: true, collateralVeins: true, previousDvt: true }
	it.each([[{}, 0, 'unlikely', 'proceed'], [{ calfDifferenceCm: 3, deepVeinTenderness: true }, 2, 'likely', 'same-day'], [{ calfDifferenceCm: 2.9, deepVeinTenderness: true }, 1, 'unlikely', 'same-day'], [all, 9, 'likely', 'same-day'], [{ alternativeAsLikely: true }, -2, 'unlikely', 'proceed']] as const)('%o', (wells, score, band, action) => expect(screening(visit({ wells }), protocol)).toMatchObject({ wells: { score, band }, action }))
	it('under 18: no score', () => expect(screening(visit({ wells: all }, '2013-01-01'), protocol)).toMatchObject({ wells: { band: 'not-applicable' }, action: 'same-day' }))
})
// Jayanthi 2015: strictly more hours than years; strictly more than 2 to 1.
it.each([[14, 14, 'hours'], [13, 13, ''], [12, 6, ''], [12, 5, 'ratio'], [12, 0, 'ratio']])('youth load: %i h, free %i', (organisedHoursPerWeek, freePlayHoursPerWeek, flag) => {
	const ids = loading(visit({}, '2014-01-20', { organisedHoursPerWeek, freePlayHoursPerWeek }), protocol).findings.map((one) => one.id)
	expect([ids.includes('loading.hours-over-age'), ids.includes('loading.organised-to-free')]).toEqual([flag === 'hours', flag === 'ratio'])
})
it('95 kg at 2.5 body weights is 2329.9 N, the middle of the span', () => { const force = loading(visit({}, '2000-01-01', undefined, 95), protocol).peakForceN!; expect((force.lowN + force.highN) / 2).toBeCloseTo(2329.9, 1) })
