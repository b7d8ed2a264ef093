/** Adding a warning sign never lowers the action. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { actions } from '../../shared/engine/findings/assessment.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { diabeticRisk } from '../../shared/engine/screening/diabetic.ts'
import { flagRows } from '../../shared/engine/screening/flags.table.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { unfoldedShape } from '../../shared/engine/visit/recorded/unfolded.ts'
import { boneSites } from '../../shared/engine/visit/terms.ts'
import type { Screening, Visit } from '../../shared/engine/visit/visit.ts'
import { screening as anyAnswers } from './random-visit.ts'

const protocol = openProtocol()
const rank = (answers: Screening, birthDate: string) =>
	actions.indexOf(
		screening(
			{
				format: 'lastwright-visit',
				version: 1,
				player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' },
				visitDate: '2027-01-20',
				screening: answers,
			} satisfies Visit,
			protocol,
		).action,
	)
it('holds for every pair of signs, with an injury, at every age', () => {
	const injury = {
		side: 'right',
		malleolarZonePain: true,
		tenderLateralMalleolus: false,
		tenderMedialMalleolus: false,
		unableToBearWeightThen: true,
		unableToBearWeightNow: true,
	} as const
	for (const birth of ['2023-01-01', '2014-01-01', '1990-01-01'])
		for (const base of [{}, { injury }])
			for (const first of flagRows)
				for (const second of flagRows) {
					const before = { ...base, [first.key]: true }
					expect(rank({ ...before, [second.key]: true }, birth)).toBeGreaterThanOrEqual(
						rank(before, birth),
					)
					if (first.action !== 'proceed') expect(rank(before, birth)).toBeGreaterThan(0)
				}
})

/**
 * Any question that unfolds: turning one answer to a warning sign never lowers the action, nor
 * frees a limb.
 */
it('holds for the questions that unfold by complaint, against random other answers', () => {
	const shapes = { ...unfoldedShape }
	const answer = fc.option(fc.boolean(), { nil: undefined })
	/** Boolean questions of a group, where felt or seen before means well. */
	const reassuring = ['feltHallux', 'feltFirstHead', 'feltFifthHead', 'examinedBefore']
	const groups = Object.entries(shapes).flatMap(([name, optional]) => {
		const shape = (
			optional.unwrap() as unknown as { shape: Record<string, { unwrap?: () => unknown }> }
		).shape
		const bools = Object.keys(shape).filter(
			(key) => (shape[key]!.unwrap?.() as { type?: string } | undefined)?.type === 'boolean',
		)
		return bools.length > 0 && 'side' in shape ? [{ name, bools }] : []
	})
	expect(groups.map((group) => group.name)).toEqual([
		'boneStress',
		'achilles',
		'syndesmosis',
		'lisfranc',
		'infection',
		'limp',
		'tumour',
	])
	for (const { name, bools } of groups)
		fc.assert(
			fc.property(
				fc.array(answer, { minLength: bools.length, maxLength: bools.length }),
				fc.nat(bools.length - 1),
				fc.constantFrom('2014-01-01', '1990-01-01'),
				fc.constantFrom(...boneSites),
				(given, at, birth, site) => {
					const answers = Object.fromEntries(
						bools.map((key, n) => [key, given[n]]).filter(([, value]) => value !== undefined),
					)
					const group = (more: object) =>
						({
							[name]: {
								side: 'left',
								...(name === 'boneStress' ? { site } : {}),
								...answers,
								...more,
							},
						}) as Screening
					const sign = bools[at]!
					const before = rank(group({}), birth),
						after = rank(group({ [sign]: !reassuring.includes(sign) }), birth)
					if (answers[sign] !== !reassuring.includes(sign))
						expect(after).toBeGreaterThanOrEqual(before)
				},
			),
			{ numRuns: 60 },
		)
})

/**
 * Questions asked for each foot or of the whole person, and the clot and injury groups: an added
 * sign never lowers the action; a limb once stopped stays stopped.
 */
it('holds for any answers to any questions', () => {
	const birth = fc.constantFrom('2014-01-01', '1990-01-01', '2023-01-01')
	const of = (answers: Screening, birthDate: string) =>
		screening(
			{
				format: 'lastwright-visit',
				version: 1,
				player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' },
				visitDate: '2027-01-20',
				screening: answers,
			} satisfies Visit,
			protocol,
		)
	const signs: readonly ((answers: Screening) => Screening)[] = [
		...flagRows.map(
			(row) =>
				(a: Screening): Screening => ({ ...a, [row.key]: true }),
		),
		...(
			[
				'ulcer',
				'infection',
				'gangrene',
				'previousUlcer',
				'neuropathy',
				'ischaemia',
				'deformity',
				'hotRedSwollen',
			] as const
		).map(
			(key) =>
				(a: Screening): Screening => ({
					...a,
					diabeticFoot: { ...a.diabeticFoot, left: { ...a.diabeticFoot?.left, [key]: true } },
				}),
		),
		...(['feltHallux', 'feltFirstHead', 'feltFifthHead'] as const).map(
			(key) =>
				(a: Screening): Screening => ({
					...a,
					neurological: { ...a.neurological, right: { ...a.neurological?.right, [key]: false } },
				}),
		),
		(a) => ({ ...a, neurological: { ...a.neurological, gettingWorse: true } }),
		(a) => ({ ...a, vascular: { ...a.vascular, tightLegWithFootDrop: true } }),
		(a) => ({ ...a, vascular: { ...a.vascular, left: { ...a.vascular?.left, restPain: true } } }),
		(a) => ({
			...a,
			vascular: {
				...a.vascular,
				left: { ...a.vascular?.left, noDorsalisPedis: true, noPosteriorTibial: true },
			},
		}),
		(a) => ({ ...a, inflammatory: { ...a.inflammatory, bothHeels: true } }),
		(a) => ({ ...a, lowEnergy: { ...a.lowEnergy, offGrowthCurve: true } }),
		...(
			[
				'deepVeinTenderness',
				'entireLegSwollen',
				'pittingOedema',
				'activeCancer',
				'previousDvt',
			] as const
		).map(
			(key) =>
				(a: Screening): Screening => ({ ...a, wells: { ...a.wells, [key]: true } }),
		),
	]
	// Every sign after every other, both alone; then after random answers.
	for (const first of signs)
		for (const second of signs) {
			const before = of(first({}), '1990-01-01'),
				after = of(second(first({})), '1990-01-01')
			if (actions.indexOf(after.action) < actions.indexOf(before.action))
				expect(`${JSON.stringify(second(first({})))}: ${after.action}`).toBe(
					`at least ${before.action}`,
				)
		}
	fc.assert(
		fc.property(anyAnswers, birth, fc.nat(signs.length - 1), (given, birthDate, at) => {
			const before = of(given as Screening, birthDate),
				after = of(signs[at]!(given as Screening), birthDate)
			expect(actions.indexOf(after.action)).toBeGreaterThanOrEqual(actions.indexOf(before.action))
			// An injury is judged by reduced feeling: the rule then gives way to a referral of another
			// name, never to none.
			for (const side of before.blockedSides) expect(after.blockedSides).toContain(side)
		}),
		{ numRuns: 1000 },
	)
})
/** All answers there are, for one foot: no sign ever lowers the risk. */
it('holds for every set of signs of a diabetic foot', () => {
	const keys = [
		'callus',
		'deformity',
		'neuropathy',
		'ischaemia',
		'previousUlcer',
		'amputation',
		'ulcer',
		'infection',
		'criticalIschaemia',
		'gangrene',
		'hotRedSwollen',
	] as const
	const order = ['low', 'moderate', 'high', 'active'],
		at = (bits: number) =>
			order.indexOf(
				diabeticRisk(
					Object.fromEntries(keys.map((key, n) => [key, (bits & (1 << n)) !== 0])),
					false,
				).risk,
			)
	const risks = Array.from({ length: 1 << keys.length }, (_, bits) => at(bits))
	expect(risks[0]).toBe(0)
	for (const bits of risks.keys())
		for (const n of keys.keys())
			if (risks[bits | (1 << n)]! < risks[bits]!)
				expect(`${bits} with ${keys[n]}`).toBe('no lower risk')
})
/** Every open question is counted as not asked. */
it('an unasked question is never no', () => {
	fc.assert(
		fc.property(anyAnswers, (given) => {
			const result = screening(
				{
					format: 'lastwright-visit',
					version: 1,
					player: { givenName: 'A', familyName: 'B', birthDate: '1990-01-01', sex: 'female' },
					visitDate: '2027-01-20',
					screening: given as Screening,
				} satisfies Visit,
				protocol,
			)
			for (const row of flagRows)
				expect(result.items.find((item) => item.id === `screening.${row.key}`)!.state).toBe(
					given[row.key] === undefined ? 'not-asked' : given[row.key] ? 'yes' : 'no',
				)
		}),
		{ numRuns: 300 },
	)
})
