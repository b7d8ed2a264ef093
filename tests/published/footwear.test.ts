/** What a sports podiatrist would expect to be told: common practice, no source, unless named. */
import { expect, it } from 'vitest'
import type { AnkleResult, PostureResult, SizingResult } from '../../shared/assessment.ts'
import { footwear } from '../../shared/footwear/footwear.ts'
import { footwearRules } from '../../shared/footwear/rules.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import type { Visit } from '../../shared/visit/visit.ts'

const protocol = openProtocol()
const sizing: SizingResult = { left: { lengthMm: 262, fitting: {} }, right: { lengthMm: 265, fitting: {} }, changes: { left: {}, right: {} }, findings: [], workings: [] }
const ankle: AnkleResult = { left: { band: 'adequate', limitedBy: 'none' }, right: { band: 'adequate', limitedBy: 'none' }, asymmetry: 'none', pitches: [], changes: { left: {}, right: {} }, findings: [], workings: [] }
const posture: PostureResult = { left: {}, right: {}, fpiScheme: 'raw', changes: { left: {}, right: {} }, findings: [], workings: [] }
const visit = (more: Partial<Visit> = {}): Visit => ({ format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' }, visitDate: '2027-01-20', ...more })
const ask = (more: Partial<Visit> = {}, context: Partial<Parameters<typeof footwear>[1]> = {}) => {
	const result = footwear(visit(more), { sizing, ankle, posture, ...context }, protocol)
	return { ...result, seeks: result.target.seek.map((one) => one.feature), avoids: result.target.avoid.map((one) => one.feature) }
}
it('has its rules, each with an id of its own', () => { expect(footwearRules.length).toBeGreaterThanOrEqual(24); expect(new Set(footwearRules.map((one) => one.id)).size).toBe(footwearRules.length) })
it('nothing recorded, nothing sought', () => expect([ask().seeks, ask().avoids]).toEqual([[], []]))
it('either side alone is enough', () => { for (const side of ['left', 'right'] as const) {
	expect(ask({}, { posture: { ...posture, [side]: { firstRay: 'plantarflexed' } } }).seeks).toContain('stud-clear-of-first-joint')
	expect(ask({}, { sizing: { ...sizing, [side]: { ...sizing[side], widthForLengthZ: 1 } } }).seeks).toContain('wide-fitting')
	expect(ask({}, { ankle: { ...ankle, [side]: { band: 'restricted', limitedBy: 'none' } } }).seeks).toContain('raised-heel')
} })
it('past conditions count only as history', () => {
	const was = (condition: 'calcaneal-apophysitis' | 'acl-history') => ask({ conditions: [{ condition, side: 'left', status: 'past' }] }).seeks
	expect([was('calcaneal-apophysitis'), was('acl-history')]).toEqual([[], ['round-studs', 'low-rotational-grip']])
})
it('names a contradiction and raises it', () => {
	const both = ask({ conditions: [{ condition: 'achilles-insertional', side: 'left', status: 'current' }, { condition: 'plantar-heel-pain', side: 'left', status: 'current' }] })
	expect(both.contradictions.map((one) => one.feature)).toContain('firm-heel-counter')
	expect(both.findings.some((one) => one.level === 'caution')).toBe(true)
})
it.each([[269.9, 'change'], [270, 'keep'], [277, 'keep'], [277.1, 'change'], [undefined, 'unknown']])('inside %f mm on a foot of 265: %s', (insideLengthMm, verdict) => expect(ask({ footwear: [{ id: 'p', ...(insideLengthMm ? { insideLengthMm } : {}) }] }).current[0]!.verdict).toBe(verdict))
