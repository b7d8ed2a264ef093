/** Beighton score and leg-length difference. */

import { describe, expect, it } from 'vitest'
import { durationFactor, firstLiftBelowMm } from '../../shared/engine/posture/leg-length.ts'
import { posture } from '../../shared/engine/posture/posture.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { holding } from '../engine/raise-visit.ts'
import { ids, raw, visit } from './posture-visit.ts'

describe('Beighton score by maturity', () => {
	// 2017 criteria, PMC7785693 (clinical.md 3.5 CHECK, 9 row 23): prepubertal 13 y 5 no; mature 17 y
	// 5 yes; 55 y 4 yes; 30 y 4 with two yes answers yes.
	it.each([
		['2013-01-01', { beighton: 5, puberty: 'before' as const }, 'not-met'],
		['2009-01-01', { beighton: 5, puberty: 'after' as const }, 'met'],
		['1971-01-01', { beighton: 4 }, 'met'],
		['1996-01-01', { beighton: 4, hypermobilityHistory: 2 }, 'met'],
		['1996-01-01', { beighton: 4, hypermobilityHistory: 1 }, 'not-met'],
		['1996-01-01', { beighton: 3, hypermobilityHistory: 5 }, 'not-met'],
		['2013-01-01', { beighton: 6, puberty: 'during' as const }, 'met'],
		['2013-01-01', { beighton: 9 }, 'maturity-unknown'],
	])('born %s, %j: %s', (born, body, state) =>
		expect(posture(visit({}, { born, body }), [], raw).beighton?.state).toBe(state),
	)
	it('one below the cut-off asks for the history, once', () => {
		expect(ids(visit({}, { born: '1996-01-01', body: { beighton: 4 } }))).toContain(
			'posture.beighton-near.none',
		)
		expect(
			ids(visit({}, { born: '1996-01-01', body: { beighton: 4, hypermobilityHistory: 0 } })),
		).not.toContain('posture.beighton-near.none')
	})
})
describe('leg-length difference', () => {
	const of = (body: NonNullable<Visit['body']>, born = '1990-01-01') =>
		posture(visit({}, { born, body }), [], raw).legLength
	// Practice bands 5, 10 and 20 mm (clinical.md 2.5); 10 mm x 70 % = 7 mm, trial PMC6417033 (9 row
	// 21).
	it.each([
		[4.9, 'record-only'],
		[5, 'only-if-symptomatic'],
		[9.9, 'only-if-symptomatic'],
		[10, 'consider'],
		[19.9, 'consider'],
		[20, 'refer'],
	])('%f mm: %s', (legLengthDifferenceMm, action) =>
		expect(of({ legLengthDifferenceMm })?.action).toBe(action),
	)
	it('symptoms are one answer for every room: as recorded, else a current condition', () => {
		const condition = {
			conditions: [
				{
					condition: 'leg-length-difference' as const,
					side: 'left' as const,
					status: 'current' as const,
				},
			],
		}
		const correction = (body: NonNullable<Visit['body']>) =>
			posture(visit({}, { born: '1990-01-01', body, ...condition }), [], raw).legLength
				?.correctionMm
		expect([
			correction({ legLengthDifferenceMm: 8 }),
			correction({ legLengthDifferenceMm: 8, legLengthSymptoms: false }),
		]).toEqual([{ min: 4, max: 5.6 }, undefined])
	})
	it('where raises are held no correction is given', () => {
		const body = { legLengthDifferenceMm: 12, shorterLeg: 'left' as const, legLengthSymptoms: true }
		const held = posture(visit({}, { born: '1990-01-01', body }), [], raw, {
			gate: holding('raise', 'person'),
		})
		expect(held.legLength).toEqual({ differenceMm: 12, shorter: 'left', action: 'consider' })
		expect(held.findings.map(({ code }) => code)).toEqual(['posture.leg-length-waits'])
	})
	it('50 to 70 %', () =>
		expect(of({ legLengthDifferenceMm: 10, shorterLeg: 'left' })?.correctionMm).toEqual({
			min: 5,
			max: 7,
		}))
	it('without symptoms: none below 10 mm, and none in a growing player', () => {
		expect(of({ legLengthDifferenceMm: 8 })?.correctionMm).toBeUndefined()
		expect(of({ legLengthDifferenceMm: 8, legLengthSymptoms: true })?.correctionMm).toEqual({
			min: 4,
			max: 5.6,
		})
		expect(of({ legLengthDifferenceMm: 12 }, '2012-01-01')?.correctionMm).toBeUndefined()
	})
	// Heilig (clinical.md 2.5 CHECK): 12 / (2 + 1) = 4; 12 / (1 + 0) = 12; 10 / (3 + 2) = 2.
	it.each([
		[12, 2, 1, 4],
		[12, 1, 0, 12],
		[10, 3, 2, 2],
	])('%i / (%i + %i) is %i', (difference, duration, compensation, lift) =>
		expect(firstLiftBelowMm(difference, duration, compensation).value).toBeCloseTo(lift, 9),
	)
	it('duration in years', () => expect([5, 10, 29, 30].map(durationFactor)).toEqual([1, 2, 2, 3]))
})
