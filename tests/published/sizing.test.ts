/** Rules of the sizing room, each with its source. */
import { describe, expect, it } from 'vitest'
import { jisFitting, usMenFitting } from '../../shared/engine/sizing/fittings.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { protocol, visit } from './sizing-visit.ts'

describe('rules of the device', () => {
	const ids = (feet: Visit['feet'], player?: Partial<Visit['player']>) =>
		sizing(visit(feet, player), [], protocol).findings.map((finding) => finding.id)
	// sizing.md 6: a left and right difference is notable from more than 4 mm; fit the longer foot
	// (ISO 9407).
	it('difference of 4.0 and 4.1 mm', () => {
		expect(ids({ left: { heelToToeMm: 264 }, right: { heelToToeMm: 260 } })).not.toContain(
			'sizing.side-difference.both',
		)
		const result = sizing(
			visit({ left: { heelToToeMm: 264.1 }, right: { heelToToeMm: 260 } }),
			[],
			protocol,
		)
		expect(result.findings.map((finding) => finding.id)).toContain('sizing.side-difference.both')
		expect([result.longerFoot, result.fitLengthMm]).toEqual(['left', 264.1])
	})
	// sizing.md 2.1: size = max(toe size, arch size), followed from half a size, 4.2 mm.
	it('heel to ball asks for more', () => {
		const far = sizing(visit({ left: { heelToToeMm: 265, heelToBallMm: 201 } }), [], protocol)
		expect(far.fitLengthMm).toBeCloseTo(201 / 0.741, 6)
		expect(far.findings.map((finding) => finding.id)).toContain('sizing.arch-length.left')
		expect(
			sizing(visit({ left: { heelToToeMm: 268, heelToBallMm: 201 } }), [], protocol).fitLengthMm,
		).toBe(268)
	})
	it('both feet equally far forward: each is named and the sides do not matter', () => {
		const both = sizing(
			visit({
				left: { heelToToeMm: 265, heelToBallMm: 201 },
				right: { heelToToeMm: 265, heelToBallMm: [201, 201, 201] },
			}),
			[],
			protocol,
		)
		expect(both.findings.map((finding) => finding.id)).toEqual(
			expect.arrayContaining(['sizing.arch-length.left', 'sizing.arch-length.right']),
		)
	})
	// sizing.md 6: third reading when two differ by more than 2 mm.
	// The eighteenth birthday counts, although days / 365.25 is 17.9986 on it: adult bands and adult
	// tables.
	it('18 years to the day', () => {
		const of = (birthDate: string) =>
			sizing(visit({ left: { heelToToeMm: 260, ballWidthMm: 100 } }, { birthDate }), [], protocol)
		expect([of('2008-09-01').toeRoomMm?.min, of('2008-09-02').toeRoomMm?.min]).toEqual([5, 8])
		expect([
			of('2008-09-01').left.widthForLengthZ === undefined,
			of('2008-09-02').left.widthForLengthZ === undefined,
		]).toEqual([false, true])
	})
	it('third reading of each measure that decides', () => {
		for (const [field, rule] of [
			['heelToBallMm', 'third-reading-ball'],
			['ballWidthMm', 'third-reading-width'],
			['ballGirthMm', 'third-reading-girth'],
		] as const) {
			expect(ids({ right: { [field]: [200, 202] } })).not.toContain(`sizing.${rule}.right`)
			expect(ids({ right: { [field]: [200, 202.1] } })).toContain(`sizing.${rule}.right`)
			expect(ids({ right: { [field]: [200, 202.1, 201] } })).not.toContain(`sizing.${rule}.right`)
		}
	})
	it('third reading', () => {
		expect(ids({ left: { heelToToeMm: [260, 262] } })).not.toContain('sizing.third-reading.left')
		expect(ids({ left: { heelToToeMm: [260, 262.1] } })).toContain('sizing.third-reading.left')
	})
	// sizing.md 3.1 (own choice): adult 5 to 10 mm, under 18 8 to 12 mm, on the longer foot with
	// sock.
	it('inside length', () => {
		const feet = { left: { heelToToeMm: 260 }, sockMm: 2 }
		expect(sizing(visit(feet), [], protocol).insideLengthMm).toEqual({
			min: 267,
			target: 269.5,
			max: 272,
		})
		expect(sizing(visit(feet, { birthDate: '2012-01-01' }), [], protocol).insideLengthMm).toEqual({
			min: 270,
			target: 272,
			max: 274,
		})
	})
	it('findings that rest on no threshold row name their own source', () => {
		const { findings } = sizing(
			visit({ left: { heelToToeMm: 260 }, stance: 'seated' }),
			[],
			protocol,
		)
		const basis = (id: string) => findings.find((finding) => finding.id === id)?.basis
		expect(basis('sizing.seated.both')?.source).toMatch(/Xiong 2009/)
		expect(basis('sizing.seated.both')?.threshold).toBeUndefined()
		expect(basis('sizing.one-foot.left')?.source).toMatch(/ISO 9407/)
		expect(basis('sizing.one-foot.left')?.threshold).toBeUndefined()
	})
})
describe('next size, trainers, and change since the last visit', () => {
	it('names the next most likely size', () => {
		// UK 7 is 254 mm exactly: both neighbours are equally likely, the larger is named; each has (1
		// - 0.8888) / 2 less the far tails.
		expect(sizing(visit({ left: { heelToToeMm: 254 } }), [], protocol).nextSize).toMatchObject({
			system: 'uk',
			label: 7.5,
			scale: 'adult',
			probability: expect.closeTo(0.0556, 3),
		})
		expect(sizing(visit({ left: { heelToToeMm: 253 } }), [], protocol).nextSize).toMatchObject({
			label: 6.5,
		})
		expect(sizing(visit({ left: { heelToToeMm: 199.6 } }), [], protocol).nextSize).toMatchObject({
			label: 1,
			scale: 'adult',
		})
		expect(sizing(visit({ left: { heelToToeMm: 202 } }), [], protocol)).toMatchObject({
			sizes: { uk: { label: 1, scale: 'adult' } },
			nextSize: { label: 13.5, scale: 'child' },
		})
	})
	// sizing.md 3.1 (own choice): trainers, adult 10 to 15 mm, under 18 12 to 17 mm at purchase.
	it('trainers beside boots', () => {
		const feet = { left: { heelToToeMm: 260 }, sockMm: 2 }
		expect(sizing(visit(feet), [], protocol).trainers).toEqual({
			toeRoomMm: { min: 10, target: 12.5, max: 15 },
			insideLengthMm: { min: 272, target: 274.5, max: 277 },
		})
		expect(
			sizing(visit(feet, { birthDate: '2012-01-01' }), [], protocol).trainers?.insideLengthMm,
		).toEqual({ min: 274, target: 276.5, max: 279 })
	})
	const before = (feet: Visit['feet']): Visit => ({ ...visit(feet), visitDate: '2026-03-01' })
	const changed = (now: Visit['feet'], then: Visit['feet']) =>
		sizing(visit(now), [before(then)], protocol)
	// sizing.md 6 (own choice): 4 mm of length with the same examiner, 5 mm with another; width 4 and
	// girth 6 mm only with the same examiner.
	it.each([
		['R', 263.9, 'within-error'],
		['R', 264, 'real'],
		['S', 264.9, 'within-error'],
		['S', 265, 'real'],
		[undefined, 264.9, 'within-error'],
	] as const)('examiner %s, 260 to %f mm: %s', (examiner, mm, verdict) => {
		expect(
			changed(
				{ examiner: 'R', left: { heelToToeMm: mm } },
				{ ...(examiner ? { examiner } : {}), left: { heelToToeMm: 260 } },
			).changes.left.lengthMm?.verdict,
		).toBe(verdict)
	})
	it('width and girth', () => {
		const now = { examiner: 'R', left: { ballWidthMm: 104, ballGirthMm: 256 } },
			then = { left: { ballWidthMm: 100, ballGirthMm: 250 } }
		expect(changed(now, { examiner: 'r ', ...then }).changes.left).toMatchObject({
			widthMm: { verdict: 'real' },
			girthMm: { verdict: 'real' },
		})
		expect(changed(now, { examiner: 'S', ...then }).changes.left).toMatchObject({
			widthMm: { verdict: 'cannot-compare' },
			girthMm: { verdict: 'cannot-compare' },
		})
	})
	it('a seated foot is never compared with a standing one', () => {
		const result = changed(
			{ examiner: 'R', stance: 'seated', left: { heelToToeMm: 270 } },
			{ examiner: 'R', stance: 'standing', left: { heelToToeMm: 260 } },
		)
		expect(result.changes.left.lengthMm).toMatchObject({
			verdict: 'cannot-compare',
			why: 'the feet were measured seated now and standing then',
		})
		expect(result.findings.map((finding) => finding.id)).toEqual(
			expect.arrayContaining(['sizing.cannot-compare.both', 'sizing.seated.both']),
		)
		expect(result.findings.map((finding) => finding.id)).not.toContain('sizing.change-length.left')
	})
	it('the letter belongs to the wider foot at the length to fit', () => {
		const result = sizing(
			visit({
				left: { heelToToeMm: 271, ballGirthMm: 252, ballWidthMm: 100 },
				right: { heelToToeMm: 268, ballGirthMm: 258, ballWidthMm: 104 },
			}),
			[],
			protocol,
		)
		expect(result.fitting).toEqual({
			jis: jisFitting(271, 258, 'male', protocol),
			us: usMenFitting(271, 104, protocol),
		})
	})
})
