/** The heel raise of each foot in each pair: what trials and practice say, by hand. */
import { describe, expect, it } from 'vitest'
import type { Pair, Visit } from '../../shared/engine/visit/visit.ts'
import { holding, raiseOf } from '../engine/raise-visit.ts'

const adult: Visit = {
	format: 'lastwright-visit',
	version: 1,
	visitDate: '2026-09-01',
	player: { givenName: 'A', familyName: 'B', birthDate: '1998-01-01', sex: 'male' },
}
const child: Partial<Visit> = {
	player: { givenName: 'A', familyName: 'B', birthDate: '2015-01-01', sex: 'female' },
}
const boot: Pair = { id: 'boot', sole: 'firm-ground', heelToForefootOffsetMm: 1 }
const trainer: Pair = { id: 'trainer', sole: 'road', heelToForefootOffsetMm: 10 }
const unmeasured: Pair = { id: 'new', sole: 'turf' }
const has = (
	condition: NonNullable<Visit['conditions']>[number]['condition'],
	side: 'left' | 'right' | 'both' = 'left',
) => ({ condition, side, status: 'current' as const })
const of = (more: Partial<Visit>, options: Parameters<typeof raiseOf>[1] = {}) =>
	raiseOf({ ...adult, footwear: [boot, trainer, unmeasured], ...more }, options).result
const raiseIn = ({ pairs }: ReturnType<typeof of>, id: string) =>
	pairs.find(({ pair }) => pair === id)
/** What is added in a pair, left and right. */
const added = (result: ReturnType<typeof of>, pair: string) => {
	const { left, right } = raiseIn(result, pair)!
	return [left.addMm, right.addMm]
}
const codes = (result: ReturnType<typeof of>): string[] => result.findings.map(({ code }) => code)
const limits = (result: ReturnType<typeof of>, pair: string): string[] =>
	raiseIn(result, pair)!.limits.map(({ code }) => code)
const stiff: Visit['ankles'] = { left: { lungeDeg: 30 }, right: { lungeDeg: 40 } }

describe('for range', () => {
	// The aim is heel above forefoot: 4 mm for a restricted ankle, 6 for a front block, in boots 3 to 6
	// (clinical.md 2.4, common practice, no source). Trainers have about 10 mm by themselves
	// (common-practice.md 1), boots are nearly flat.
	it.each([
		[stiff, [3, 3], [0, 0]],
		[{ left: { lungeDeg: 30, endFeel: 'hard-stop' as const } }, [5, 5], [0, 0]],
	])('%j: the aim less the offset of the pair, not below 0', (ankles, inBoot, inTrainer) => {
		const result = of({ ankles })
		expect(result.aim.kind).toBe('range')
		expect(added(result, 'boot')).toEqual(inBoot)
		expect(added(result, 'trainer')).toEqual(inTrainer)
		expect(raiseIn(result, 'boot')!.left.heelAboveForefootMm).toBe(result.aim.mm!.left)
		expect(limits(result, 'trainer')).toEqual(['raise.offset-enough'])
	})
	it('a pair whose offset is not known has no figure: it is to be measured', () => {
		const result = of({ ankles: stiff })
		expect(added(result, 'new')).toEqual([0, 0])
		expect(limits(result, 'new')).toEqual(['raise.measure-offset'])
		expect(codes(result)).toContain('raise.offset-unknown')
	})
	it('less than 2 mm is not made', () => {
		const pair = { ...boot, heelToForefootOffsetMm: 2.5 }
		expect(added(of({ ankles: stiff, footwear: [pair] }), 'boot')).toEqual([0, 0])
	})
	it('a role without a pair is worked out for what its kind has', () => {
		const result = of({ ankles: stiff, footwear: [] })
		expect(added(result, 'role.match')).toEqual([4, 4])
		expect(raiseIn(result, 'role.match')).toMatchObject({ offsetMm: 0, offsetFrom: 'stated' })
		expect(limits(result, 'role.match')).toEqual(['raise.offset-of-kind'])
	})
	it('front and back of one ankle caught: none in either shoe, and that is said', () => {
		const result = of({
			ankles: { left: { lungeDeg: 30, endFeel: 'front-pinch' } },
			conditions: [has('posterior-ankle-impingement')],
		})
		expect(result.aim.kind).toBe('none')
		for (const pair of ['boot', 'trainer', 'new']) expect(added(result, pair)).toEqual([0, 0])
		expect(result.findings.map(({ code, params }) => [code, params.front])).toEqual([
			['raise.back-of-ankle', true],
		])
	})
})
describe('for pain', () => {
	// Rabusin 2021 BJSM 55:486 (RCT, n 100, read as an abstract): 12 mm in both daily shoes, whose own
	// offset was 12.3 mm; in boots 6 mm, common practice (clinical.md 2.3, 2.4).
	it('mid-portion Achilles of an adult: the dose of the trial in trainers, 6 mm in boots', () => {
		const result = of({ conditions: [has('achilles-midportion')] })
		expect(result.aim).toMatchObject({ kind: 'pain', mm: { left: 12, right: 12 } })
		expect(added(result, 'trainer')).toEqual([12, 12])
		expect(added(result, 'boot')).toEqual([6, 6])
		expect(added(result, 'new')).toEqual([6, 6])
		expect(limits(result, 'boot')).toEqual(['raise.limit-inside'])
	})
	it('of a minor the dose of adults is not given', () =>
		expect(added(of({ ...child, conditions: [has('achilles-midportion')] }), 'trainer')).toEqual([
			6, 6,
		]))
	// 4 to 6 mm in both shoes (clinical.md 2.4), added to the shoes worn in the trials of Wiegerinck
	// 2016 and James 2016 (growth.md).
	it('a growing heel: 5 mm in every pair, whatever its offset', () => {
		const result = of({ ...child, conditions: [has('calcaneal-apophysitis')] })
		for (const pair of ['boot', 'trainer', 'new']) expect(added(result, pair)).toEqual([5, 5])
	})
	it('no growing heel at 28', () =>
		expect(of({ conditions: [has('calcaneal-apophysitis')] }).aim.kind).toBe('none'))
	// Practice asks for a shoe with 6 to 10 mm of offset (flags-load.md): the offset counts.
	it('pain under the heel: 6 mm less the offset', () => {
		const result = of({ conditions: [has('plantar-heel-pain')] })
		expect(added(result, 'boot')).toEqual([5, 5])
		expect(added(result, 'trainer')).toEqual([0, 0])
		expect(limits(result, 'new')).toEqual(['raise.measure-offset'])
	})
	it('with a stiff ankle the one that adds most in a pair, never the sum', () => {
		const result = of({ ankles: stiff, conditions: [has('achilles-insertional')] })
		expect(added(result, 'boot')).toEqual([6, 6])
		expect(added(result, 'trainer')).toEqual([6, 6])
	})
	// 24 mm: median offset 12.3 and 12 mm of raise in the trial.
	it('the heel stands no more than 24 mm above the forefoot', () => {
		const high = { ...trainer, heelToForefootOffsetMm: 16 }
		const result = of({ footwear: [high], conditions: [has('achilles-midportion')] })
		expect(added(result, 'trainer')).toEqual([8, 8])
		expect(limits(result, 'trainer')).toEqual(['raise.limit-pitch'])
	})
})
describe('for the leg length', () => {
	// PMC6417033 (RCT, n 42): 70 % of the difference, 10 mm to 7 mm (clinical.md 2.5). In the shoe first,
	// then on the outsole, whole at the heel and half at the ball.
	const body = { legLengthDifferenceMm: 10, shorterLeg: 'right' as const, legLengthSymptoms: true }
	it('on the shorter side in every pair, whatever its offset', () => {
		const result = of({ body })
		expect(result.aim).toMatchObject({ kind: 'leg-length', mm: { left: 0, right: 7 } })
		for (const pair of ['boot', 'trainer', 'new']) expect(added(result, pair)).toEqual([0, 7])
		expect(raiseIn(result, 'boot')!.right).toMatchObject({
			madeBy: 'outsole',
			addedUnderHeelMm: 0,
			heelAboveForefootMm: 4.5,
		})
		expect(raiseIn(result, 'trainer')!.right).toMatchObject({
			madeBy: 'wedge',
			addedUnderHeelMm: 7,
			heelAboveForefootMm: 17,
		})
	})
	it('on top of a raise for both, which gives way to it', () => {
		const result = of({
			body: { ...body, legLengthDifferenceMm: 5 },
			conditions: [has('achilles-insertional')],
		})
		// 5 x 0.7 = 3.5, made as 3; in a boot 6 - 3 = 3 are left for both.
		expect(added(result, 'boot')).toEqual([3, 6])
		expect(added(result, 'trainer')).toEqual([6, 9])
	})
	// clinical.md 2.5: below 5 mm record, from 20 refer, a growing player only with symptoms.
	it.each([
		[{ ...body, legLengthDifferenceMm: 4.9 }, {}],
		[{ ...body, legLengthDifferenceMm: 20 }, {}],
		[{ ...body, legLengthSymptoms: false }, child],
		[{ ...body, legLengthDifferenceMm: 9, legLengthSymptoms: false }, {}],
	])('%j: none', (recorded, more) => expect(of({ ...more, body: recorded }).aim.kind).toBe('none'))
})
describe('the forefoot', () => {
	// A raise moves load forward (clinical.md 4.4, forefoot pain a caution of heel lifts); 10 mm, the
	// usual running shoe, is our own choice.
	it.each(['hallux-limitus', 'interdigital-neuroma', 'turf-toe', 'sesamoid-pain'] as const)(
		'with %s: no more than 10 mm of heel above forefoot',
		(condition) => {
			const conditions = [has('achilles-insertional'), has(condition, 'right')]
			const result = of({ conditions, footwear: [{ ...boot, heelToForefootOffsetMm: 6 }, trainer] })
			expect(added(result, 'boot')).toEqual([4, 4])
			expect(added(result, 'trainer')).toEqual([0, 0])
			expect(result.findings.find(({ code }) => code === 'raise.forefoot')?.level).toBe('caution')
		},
	)
	it('nothing goes under the heel before the offset is measured', () => {
		const conditions = [has('achilles-insertional'), has('turf-toe')]
		const result = of({ conditions, footwear: [unmeasured] })
		expect(added(result, 'new')).toEqual([0, 0])
		expect(limits(result, 'new')).toEqual(['raise.measure-offset'])
	})
})
describe('pairs', () => {
	it.each([
		{ ...boot, damage: ['stud-sharp' as const] },
		{ ...boot, damage: ['sole-separated' as const] },
		{ ...boot, insideLengthMm: 250 },
	])('nothing in %j', (pair) => {
		const feet = { left: { heelToToeMm: 262 }, right: { heelToToeMm: 262 } }
		const result = of({ ankles: stiff, feet, footwear: [pair] })
		expect(added(result, 'boot')).toEqual([0, 0])
		expect(limits(result, 'boot')).toEqual(['raise.left-off'])
		// the role is then worked out for a pair still to be chosen
		expect(added(result, 'role.match')).toEqual([4, 4])
	})
	it('one that is worn until it is replaced has a figure, and so has the next', () => {
		const pairsReplaced = new Set(['boot'])
		const result = of({ ankles: stiff, footwear: [boot] }, { pairsReplaced })
		expect(added(result, 'boot')).toEqual([3, 3])
		expect(added(result, 'role.match')).toEqual([4, 4])
	})
	it('nor in one that others leave off', () =>
		expect(added(of({ ankles: stiff }, { pairsLeftOff: new Set(['boot']) }), 'boot')).toEqual([
			0, 0,
		]))
	// An insert that is worn and not measured counts as 3 mm (shells for boots 2.5 to 3.5 mm,
	// clinical.md 4.5): 3 of the 6 mm of a boot are left.
	it('an insert that is worn counts', () => {
		const pair = { ...boot, insertInside: true }
		const result = of({ conditions: [has('achilles-insertional')], footwear: [pair] })
		expect(raiseIn(result, 'boot')).toMatchObject({
			left: { addMm: 3, madeBy: 'insert', addedUnderHeelMm: 6 },
			worn: { insert: true, verdict: 'leave' },
		})
	})
	it.each([
		['what is asked for stays', 5.5, stiff, [has('achilles-insertional')], 'leave', [5.5, 5.5]],
		['less than that is replaced', 3, stiff, [has('achilles-insertional')], 'take-out', [6, 6]],
		['nothing is asked: left, and asked about', 4, {}, [], 'leave', [0, 0]],
		['more than a boot holds comes out', 7, {}, [], 'take-out', [0, 0]],
		[
			'what closes a sore back of the ankle comes out',
			4,
			stiff,
			[has('posterior-ankle-impingement')],
			'take-out',
			[0, 0],
		],
	] as const)('a raise that is worn: %s', (_, heelLiftMm, ankles, conditions, verdict, mm) => {
		const footwear = [{ ...boot, heelLiftMm }]
		const result = of({ ankles, conditions: [...conditions], footwear })
		expect(raiseIn(result, 'boot')?.worn?.verdict).toBe(verdict)
		expect(added(result, 'boot')).toEqual(mm)
		expect(codes(result)).toContain('raise.worn')
	})
})
describe('held', () => {
	it('for the player: nothing but what is worn, which stays', () => {
		const footwear = [{ ...boot, heelLiftMm: 4 }, trainer]
		const result = of({ ankles: stiff, footwear }, { gate: holding('raise', 'person') })
		expect([result.aim.kind, result.pairs, result.steps]).toEqual(['none', [], []])
		expect(result.findings.map(({ code, params }) => [code, params.verdict])).toEqual([
			['raise.worn', 'leave'],
		])
	})
	it.each(['weight', 'insert'] as const)('%s on one limb: none in the other', (what) => {
		const conditions = [has('achilles-insertional', 'right')]
		const result = of({ conditions }, { gate: holding(what, 'left') })
		for (const pair of ['boot', 'trainer', 'new']) expect(added(result, pair)).toEqual([0, 0])
		expect(codes(result)).toEqual(['raise.limb-waits'])
	})
	it('the insert of the longer leg: the correction of the shorter one stays', () => {
		const body = { legLengthDifferenceMm: 8, shorterLeg: 'right' as const, legLengthSymptoms: true }
		expect(added(of({ body }, { gate: holding('insert', 'left') }), 'boot')).toEqual([0, 5])
		expect(added(of({ body }, { gate: holding('insert', 'right') }), 'boot')).toEqual([0, 0])
	})
})
describe('steps', () => {
	// Everyday shoes, then training, never first in a match; down by 2 to 3 mm every 2 weeks after 4 to
	// 6 weeks without symptoms (clinical.md 2.4), re-check at 6 weeks (growth.md): common practice.
	it('worn in from everyday shoes to matches, then given up', () => {
		const { steps } = of({ conditions: [has('achilles-insertional')] })
		expect(steps.map(({ from, when, addMm }) => [from, when, addMm.left])).toEqual([
			['P0D', 'everyday', 6],
			['P7D', 'training', 6],
			['P14D', 'match', 6],
			['P0D', 'stop', 0],
			['P42D', 're-check', 6],
			['P35D', 'free-of-pain', 4],
			['P49D', 'free-of-pain', 2],
			['P63D', 'free-of-pain', 0],
		])
	})
	it('a correction of the leg length is not given up', () => {
		const body = { legLengthDifferenceMm: 8, shorterLeg: 'left' as const, legLengthSymptoms: true }
		const { steps } = of({ body })
		expect(steps.map(({ when }) => when)).toEqual([
			'everyday',
			'training',
			'match',
			'stop',
			're-check',
		])
	})
})
