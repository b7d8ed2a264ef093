/** Ottawa truth table (Stiell 1993), and what a negative rule leaves. */
import { describe, expect, it } from 'vitest'
import {
	filmNeeded,
	negativeLikelihoodRatio,
	probabilityAfter,
} from '../../shared/engine/screening/ottawa.ts'
import { screened } from './screened-visit.ts'

describe('Ottawa', () => {
	it.each([
		[0, 1, 1, 1, 'not-met'],
		[1, 0, 0, 0, 'not-met'],
		[1, 1, 0, 0, 'met'],
		[1, 0, 1, 1, 'met'],
		[1, 0, 1, 0, 'not-met'],
		[1, 0, 0, 1, 'not-met'],
		[1, 1, 1, 1, 'met'],
	] as const)('pain %i, tender %i, unable then %i, now %i', (pain, tender, then, now, state) =>
		expect(filmNeeded(pain === 1, tender === 1, then === 1, now === 1)).toBe(state),
	)
	it('a missing answer is never no', () =>
		expect([
			filmNeeded(true, undefined, false, false),
			filmNeeded(undefined, true, false, false),
			filmNeeded(true, true, undefined, undefined),
		]).toEqual(['incomplete', 'incomplete', 'met']))
	// flags-load.md 1.2 row 8: any missing input with the rest negative is incomplete, never no; a
	// rule already met stays met.
	it('each question left open alone', () => {
		const answers = [false, false, false, false] as (boolean | undefined)[]
		for (const pain of [false, true])
			for (const at of [0, 1, 2, 3]) {
				const [zonePain, ...others] = answers.with(0, pain).with(at, undefined)
				expect(
					filmNeeded(zonePain, others[0], others[1], others[2]),
					`pain ${pain}, question ${at}`,
				).toBe('incomplete')
			}
	})
	// All sixteen rows against the printed Boolean: P and (T or (I and N)).
	it('the whole truth table', () => {
		for (let row = 0; row < 16; row++) {
			const is = (bit: number) => (row & bit) !== 0
			const [pain, tender, then, now] = [is(8), is(4), is(2), is(1)] as const
			const film = pain && (tender || (then && now))
			expect(filmNeeded(pain, tender, then, now)).toBe(film ? 'met' : 'not-met')
		}
	})
	const quiet = {
		side: 'left',
		daysAgo: 2,
		malleolarZonePain: true,
		midfootZonePain: false,
		tenderLateralMalleolus: false,
		tenderMedialMalleolus: false,
		tenderNavicular: false,
		tenderFifthMetatarsalBase: false,
		unableToBearWeightThen: false,
		unableToBearWeightNow: false,
	} as const
	it('met is same-day, newly unable is imaging, quiet proceeds', () => {
		expect(screened({ injury: { ...quiet, tenderLateralMalleolus: true } })).toMatchObject({
			action: 'same-day',
			ottawa: { left: { ankle: 'met', foot: 'not-met' } },
		})
		expect(screened({ injury: { ...quiet, unableToBearWeightNow: true } })).toMatchObject({
			action: 'imaging',
			ottawa: { left: { ankle: 'not-met' } },
		})
		expect(screened({ injury: quiet }).action).toBe('proceed')
	})
	// Row 1: tenderness without pain in the zone is no by the rule, with a warning; row 6: new loss
	// of weight bearing asks for imaging; both rules may be met.
	it('rows 1 and 6, and both rules at once', () => {
		const tender = screened({
			injury: {
				...quiet,
				malleolarZonePain: false,
				tenderLateralMalleolus: true,
				unableToBearWeightThen: true,
				unableToBearWeightNow: true,
			},
		})
		expect([
			tender.ottawa.left?.ankle,
			tender.findings.some(
				({ id, level }) => id === 'screening.tender-without-pain.left' && level === 'caution',
			),
		]).toEqual(['not-met', true])
		expect(
			screened({ injury: { ...quiet, unableToBearWeightNow: true } }).items.find(
				(item) => item.id === 'screening.newly-unable.left',
			)?.action,
		).toBe('imaging')
		expect(
			screened({
				injury: {
					...quiet,
					midfootZonePain: true,
					unableToBearWeightThen: true,
					unableToBearWeightNow: true,
				},
			}).ottawa.left,
		).toEqual({ ankle: 'met', foot: 'met' })
	})
	it.each([
		[10, '2000-01-01', 'not-met'],
		[11, '2000-01-01', 'not-applicable'],
		[2, '2021-01-20', 'not-met'],
		[2, '2021-01-21', 'not-applicable'],
	] as const)('%i days, born %s: %s', (daysAgo, birth, state) =>
		expect(screened({ injury: { ...quiet, daysAgo } }, birth).ottawa.left?.ankle).toBe(state),
	)
	it('reduced sensation: not applicable, never not met', () =>
		expect(screened({ injury: quiet, reducedSensation: true }).ottawa.left).toEqual({
			ankle: 'not-applicable',
			foot: 'not-applicable',
		}))
	it.each([
		[{ daysAgo: 11 }, '2000-01-01'],
		[{ pregnant: true }, '2000-01-01'],
		[{ cannotBeAssessed: true }, '2000-01-01'],
		[{}, '2022-01-01'],
	])('not applicable %o', (more, birth) =>
		expect(screened({ injury: { ...quiet, ...more } }, birth)).toMatchObject({
			action: 'same-day',
			items: expect.arrayContaining([
				expect.objectContaining({ code: 'screening.ottawa-not-applicable', state: 'yes' }),
			]),
			ottawa: { left: { ankle: 'not-applicable', foot: 'not-applicable' } },
		}),
	)
})

// Bachmann 2003 and Mayer 2009: what a negative rule leaves.
it('post-test probabilities', () => {
	expect(probabilityAfter(0.15, 0.08) * 100).toBeCloseTo(1.392, 2)
	expect(probabilityAfter(0.15, 0.07) * 100).toBeCloseTo(1.22, 2)
	expect(Math.abs(negativeLikelihoodRatio(0.978, 0.315) - 0.0698)).toBeLessThan(0.0005)
})
