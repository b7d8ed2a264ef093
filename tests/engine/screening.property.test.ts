/** Adding a warning sign never lowers the action. */
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { actions } from '../../shared/assessment.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import { flagRows } from '../../shared/screening/flags.ts'
import { screening } from '../../shared/screening/screening.ts'
import { boneSites } from '../../shared/visit/terms.ts'
import { type Screening, unfoldedShape, type Visit } from '../../shared/visit/visit.ts'

const protocol = openProtocol()
const rank = (answers: Screening, birthDate: string) => actions.indexOf(screening({ format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' }, visitDate: '2027-01-20', screening: answers } satisfies Visit, protocol).action)
it('holds for every pair of signs, with an injury, at every age', () => {
	const injury = { side: 'right', malleolarZonePain: true, tenderLateralMalleolus: false, tenderMedialMalleolus: false, unableToBearWeightThen: true, unableToBearWeightNow: true } as const
	for (const birth of ['2023-01-01', '2014-01-01', '1990-01-01'])
		for (const base of [{}, { injury }])
			for (const first of flagRows) for (const second of flagRows) {
				const before = { ...base, [first.key]: true }
				expect(rank({ ...before, [second.key]: true }, birth)).toBeGreaterThanOrEqual(rank(before, birth))
				expect(rank(before, birth)).toBeGreaterThan(0)
			}
})

/** Any question that unfolds: turning one answer to a warning sign never lowers the action, nor frees a limb. */
it('holds for the questions that unfold by complaint, against random other answers', () => {
	const shapes = { ...unfoldedShape }
	const answer = fc.option(fc.boolean(), { nil: undefined })
	/** Boolean questions of a group, where felt or seen before means well. */
	const reassuring = ['feltHallux', 'feltFirstHead', 'feltFifthHead', 'examinedBefore']
	const groups = Object.entries(shapes).flatMap(([name, optional]) => {
		const shape = (optional.unwrap() as unknown as { shape: Record<string, { unwrap?: () => unknown }> }).shape
		const bools = Object.keys(shape).filter((key) => (shape[key]!.unwrap?.() as { type?: string } | undefined)?.type === 'boolean')
		return bools.length > 0 && 'side' in shape ? [{ name, bools }] : []
	})
	expect(groups.map((one) => one.name)).toEqual(['boneStress', 'achilles', 'syndesmosis', 'lisfranc', 'infection', 'limp', 'tumour'])
	for (const { name, bools } of groups) fc.assert(fc.property(fc.array(answer, { minLength: bools.length, maxLength: bools.length }), fc.nat(bools.length - 1), fc.constantFrom('2014-01-01', '1990-01-01'), fc.constantFrom(...boneSites), (given, at, birth, site) => {
		const answers = Object.fromEntries(bools.map((key, n) => [key, given[n]]).filter(([, value]) => value !== undefined))
		const group = (more: object) => ({ [name]: { side: 'left', ...(name === 'boneStress' ? { site } : {}), ...answers, ...more } }) as Screening
		const sign = bools[at]!
		const before = rank(group({}), birth), after = rank(group({ [sign]: !reassuring.includes(sign) }), birth)
		if (answers[sign] !== !reassuring.includes(sign)) expect(after).toBeGreaterThanOrEqual(before)
	}), { numRuns: 60 })
})
