/** A pair on the foot: less room is never milder, a held foot is never fitted, left is right mirrored. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { OwnedVerdict } from '../../shared/engine/findings/prescription-result.ts'
import { fitOfPair, fits } from '../../shared/engine/onfoot/fit.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { beginRecheck } from '../../shared/engine/recheck/begin.ts'
import { ownedVerdicts } from '../../shared/engine/visit/terms.ts'
import { type Pair, type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { spokenTo } from '../../shared/engine/words/statement.ts'
import { swapVisit } from './mirror.ts'

const protocol = openProtocol()
type OnFoot = NonNullable<Pair['onFoot']>
const visitOf = (onFoot: OnFoot, more: Partial<Visit> = {}, pair: Partial<Pair> = {}): Visit =>
	visitSchema.parse({
		format: 'lastwright-visit',
		version: 1,
		player: { givenName: 'A', familyName: 'B', birthDate: '2000-01-01', sex: 'male' },
		visitDate: '2027-01-20',
		play: { surfaces: ['natural-firm'], matchesPerWeek: 1, trainingsPerWeek: 2 },
		feet: { left: { heelToToeMm: 260 }, right: { heelToToeMm: 260 } },
		footwear: [
			{ id: 'p', name: 'boots', sole: 'firm-ground', insideLengthMm: 267, onFoot, ...pair },
		],
		...more,
	})
function seen(onFoot: OnFoot, more: Partial<Visit> = {}, pair: Partial<Pair> = {}) {
	const visit = visitOf(onFoot, more, pair)
	const assessment = assess(visit, [], protocol)
	const owned = assessment.prescription.owned[0]!
	const { gate } = assessment.prescription
	const fit = fitOfPair(visit.footwear![0]!, visit, owned.verdict, gate)
	const codes = (owned.params.said as { code: string }[]).map(({ code }) => code)
	return { assessment, owned, fit, codes, gate }
}
type Foot = NonNullable<OnFoot['left']>
const good: Foot = { roomMm: 8, width: 'good', heel: 'holds', pressure: ['none'] }
const both = (foot: Foot, more: Partial<OnFoot> = {}): OnFoot => ({
	role: 'match',
	left: foot,
	right: foot,
	...more,
})
const gravity: readonly OwnedVerdict[] = [
	'keep',
	'training-only',
	'modify',
	'replace',
	'stop-wearing',
]
const feet = fc.record(
	{
		width: fc.constantFrom('too-tight', 'snug', 'good', 'loose'),
		heel: fc.constantFrom('holds', 'slips'),
		pressure: fc.subarray(['great-toe', 'instep', 'heel'] as const),
		bends: fc.constantFrom('at-the-ball', 'behind-the-ball', 'hardly'),
	},
	{ requiredKeys: [] },
) as fc.Arbitrary<NonNullable<OnFoot['left']>>

describe('a pair on the foot', () => {
	it('is worn in where it suits, as it was asked for', () => {
		const { owned, fit, assessment } = seen(both({ ...good }))
		expect([owned.verdict, fit]).toEqual(['keep', 'wear'])
		expect(assessment.findings.find(({ topic }) => topic === 'onfoot')?.code).toBe(
			'onfoot.as-asked',
		)
	})
	it.each([
		['a place that presses', { pressure: ['heel'] }, 'modify', 'wear-changed', 'onfoot.presses'],
		['a loose width', { width: 'loose' }, 'modify', 'wear-changed', 'onfoot.loose'],
		['a heel that slips', { heel: 'slips' }, 'modify', 'wear-changed', 'pairs.heel-slips'],
		['a width too tight', { width: 'too-tight' }, 'replace', 'take-back', 'onfoot.too-tight'],
		[
			'a sole that bends behind',
			{ bends: 'behind-the-ball' },
			'replace',
			'take-back',
			'onfoot.bends-behind',
		],
		['no room left', { roomMm: 0 }, 'stop-wearing', 'take-back', 'owned.touches'],
	] as [string, Foot, OwnedVerdict, string, string][])('%s', (_name, foot, verdict, fit, code) => {
		const found = seen(both({ ...good, ...foot }))
		expect([found.owned.verdict, found.fit]).toEqual([verdict, fit])
		expect(found.codes).toContain(code)
	})
	it('asks for a lower stud only where the joint is at risk', () => {
		const under = both({ ...good, studs: ['first-joint'] })
		expect(seen(under).owned.verdict).toBe('keep')
		const sore = seen(under, {
			conditions: [{ condition: 'sesamoid-pain', side: 'left', status: 'current' }],
		})
		expect(sore.codes).toContain('onfoot.stud-under')
		expect(sore.owned.params.said).toContainEqual({
			code: 'onfoot.stud-under',
			params: { joints: { left: ['first-joint'], right: [] } },
		})
	})
	it('takes no label for a measure', () => {
		const { codes } = seen({ role: 'match', lengthBy: 'label', left: { heel: 'holds' } })
		expect(codes.slice(0, 1)).toEqual(['owned.keep-unmeasured'])
		expect(codes).toContain('onfoot.by-label')
	})
	it('says that room seen and room by length cannot both be right', () => {
		const { codes } = seen(both({ ...good }), {}, { insideLengthMm: 272 })
		expect(codes).toContain('onfoot.rooms-differ')
	})
	it('is changed where it feels worse by what a trial of comfort counts as change', () => {
		const felt = (comfortLater: number) =>
			seen(both({ ...good }, { comfortFirst: 8, comfortLater })).codes.includes(
				'onfoot.comfort-fell',
			)
		expect([felt(8), felt(7)]).toEqual([false, true])
	})
	it('has no second verdict: a pair that was there before is not taken back', () => {
		const { owned, fit } = seen({ left: { roomMm: 0 } })
		expect([owned.verdict, fit]).toEqual(['stop-wearing', undefined])
	})
	it('names what was asked then and is not there', () => {
		const since: Visit['since'] = {
			visitDate: '2026-12-01',
			bought: [
				{
					role: 'match',
					answer: 'bought',
					pair: 'p',
					asked: {
						insideLengthMm: { min: 274, target: 276, max: 278 },
						seek: ['wide-fitting'],
						avoid: ['stiff-forefoot'],
					},
				},
			],
		}
		const { assessment, fit } = seen({ left: { width: 'snug', bends: 'hardly' } }, { since })
		const finding = assessment.findings.find(({ code }) => code === 'onfoot.not-as-asked')!
		expect(finding.params).toMatchObject({
			on: '2026-12-01',
			missing: ['wide-fitting'],
			against: ['stiff-forefoot'],
			length: { insideLengthMm: 267, leastMm: 274, mostMm: 278 },
		})
		expect(spokenTo('player', finding)).toBeUndefined()
		expect(fit).toBe('wear')
	})
	it('comes to the next visit as what was measured of it, and is looked at again', () => {
		const visit = visitOf(both({ ...good }, { model: 'm', lengthBy: 'gauge', comfortFirst: 3 }))
		const last = { visit, assessment: assess(visit, [], protocol), decisions: {} as never }
		const decisions = { actions: [], shelf: [], insert: {} } as never
		const [pair] = beginRecheck({ ...last, decisions }, '2027-03-01', protocol).footwear!
		expect(pair!.onFoot).toEqual({
			tried: '2027-01-20',
			model: 'm',
			lengthBy: 'gauge',
			comfortFirst: 3,
		})
		const next = seen(pair!.onFoot!, { visitDate: '2027-03-01' })
		expect(next.codes).not.toContain('owned.uncomfortable')
	})
})
describe('danger', () => {
	const holds = ['sport', 'match', 'impact', 'purchase', 'shelf', 'weight'] as const
	it('never lets a foot that is held be fitted', () => {
		fc.assert(
			fc.property(
				feet,
				fc.constantFrom(...holds),
				fc.constantFrom(...ownedVerdicts),
				(foot, what, verdict) => {
					const hold = { what, rule: 'any', until: 'outcome', since: '2027-01-20' } as const
					const gate = { ...openGate, person: { ...openGate.person, holds: [hold] } }
					const visit = visitOf(both(foot, { comfortFirst: 9 }))
					const fit = fitOfPair(visit.footwear![0]!, visit, verdict, gate as never)
					expect(['not-yet', 'take-back']).toContain(fit)
				},
			),
		)
	})
	it('never wears in what presses on a foot whose skin is at risk', () => {
		const { owned, fit, codes } = seen(both({ ...good, pressure: ['small-toes'] }), {
			screening: { reducedSensation: true },
		})
		expect(codes).toContain('onfoot.presses-at-risk')
		expect([owned.verdict, fit]).toEqual(['stop-wearing', 'take-back'])
		const fine = seen(both({ ...good }), { screening: { reducedSensation: true } })
		expect(fine.fit).toBe('not-yet')
	})
})
describe('laws', () => {
	it('is never milder with less room, up to the band', () => {
		fc.assert(
			fc.property(
				feet,
				fc.integer({ min: 0, max: 10 }),
				fc.integer({ min: 0, max: 10 }),
				(foot, one, other) => {
					const [less, more] = [one, other].toSorted((a, b) => a - b)
					const at = (roomMm: number) => seen(both({ ...foot, roomMm }))
					const [tight, wide] = [at(less!), at(more!)]
					expect(gravity.indexOf(tight.owned.verdict)).toBeGreaterThanOrEqual(
						gravity.indexOf(wide.owned.verdict),
					)
					expect(fits.indexOf(tight.fit!)).toBeGreaterThanOrEqual(fits.indexOf(wide.fit!))
				},
			),
			{ numRuns: 40 },
		)
	})
	it('is the same in a mirror', () => {
		fc.assert(
			fc.property(feet, feet, (left, right) => {
				const visit = visitOf({ role: 'match', left, right })
				const [owned, other] = [visit, swapVisit(visit)].map(
					(one) => assess(one, [], protocol).prescription.owned[0]!,
				)
				expect(other!.verdict).toBe(owned!.verdict)
				const codesOf = (pair: typeof owned) =>
					(pair!.params.said as { code: string }[]).map(({ code }) => code)
				expect(codesOf(other)).toEqual(codesOf(owned))
			}),
			{ numRuns: 40 },
		)
	})
})
