/** What a condition asks of every room, as the clinician reads it; own expectations, no source. */
import { describe, expect, it } from 'vitest'
import { askedBy } from '../../shared/engine/asked/asked.ts'
import { askedSaid } from '../../shared/engine/asked/said.ts'
import { usualAges } from '../../shared/engine/conditions/ages.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type Condition, conditions } from '../../shared/engine/visit/terms.ts'
import { askedPartNames } from '../../shared/engine/words/en/asked.ts'
import { contentOf, spokenTo } from '../../shared/engine/words/statement.ts'

const protocol = openProtocol()
const partsOf = (condition: Condition) => askedSaid(condition, protocol)
const said = (condition: Condition, wanted: string) =>
	partsOf(condition)
		.filter(({ part }) => part === wanted)
		.flatMap((part) => part.said)

describe.each(conditions)('%s', (condition) => {
	it('each part is said in the order of a visit, each sentence whole and once', () => {
		const parts = partsOf(condition)
		const order = Object.keys(askedPartNames)
		expect(parts.map(({ part }) => order.indexOf(part))).toEqual(
			parts.map(({ part }) => order.indexOf(part)).sort((one, other) => one - other),
		)
		for (const { part, said: statements } of parts) {
			expect(new Set(statements.map(contentOf)).size, part).toBe(statements.length)
			for (const { says } of statements) {
				expect(says).not.toMatch(/undefined|NaN|\[object|\s{2}|\s[.,;:]|\.\./)
				expect(says).toMatch(/^[A-Z].*\.$/)
			}
		}
	})
	it('every room that is asked something is told of, and no other', () => {
		const { shoe, joints, lacing, changes, insert, season, exercises, questions, caution } =
			askedBy(condition)
		const work = (of: typeof lacing) => of.calledFor.length + of.against.length + of.never.length
		const { calls, against, holds, withDevice, gentle } = insert
		const asks: Record<keyof typeof askedPartNames, number> = {
			ages: Object.keys(usualAges(condition, protocol)).length,
			care: Number(caution),
			questions: questions.length,
			shoe: shoe.flatMap(({ seek, avoid }) => [...seek, ...avoid]).length + joints.length,
			changes: work(changes),
			lacing: work(lacing),
			insert: calls.length + against.length + holds.length + withDevice.length + Number(gentle),
			season: season.length,
			exercise: exercises.length,
		}
		expect(partsOf(condition).map(({ part }) => part)).toEqual(
			Object.entries(asks)
				.filter(([, count]) => count > 0)
				.map(([part]) => part),
		)
	})
	it('what is only asked is told to no other reader', () => {
		for (const statement of partsOf(condition).flatMap((part) => part.said))
			if (statement.code.startsWith('asked.'))
				for (const reader of ['player', 'guardian', 'doctor', 'laboratory', 'coach'] as const)
					expect(spokenTo(reader, statement)).toBeUndefined()
	})
})
describe('what is asked', () => {
	it('every condition of the list asks something, but one in words', () =>
		expect(conditions.filter((condition) => partsOf(condition).length === 0)).toEqual([
			'other-condition',
		]))
	it('rules that hold alike are one, each feature once', () => {
		const [first, ...others] = said('achilles-insertional', 'shoe')
		expect(others).toEqual([])
		expect(first?.params).toMatchObject({ past: false, together: false })
		const { seek, avoid } = (first ?? { params: {} }).params as Record<string, string[]>
		for (const features of [seek!, avoid!]) expect(new Set(features).size).toBe(features.length)
		expect(avoid).toContain('firm-heel-counter')
	})
	it('a caution on several lacings is said once, with each of them', () => {
		const [care, ...others] = said('neuropathy', 'lacing')
		expect(others).toEqual([])
		expect(care).toMatchObject({
			code: 'asked.work-care',
			params: { caution: 'work.caution-reduced-feeling' },
		})
	})
	it('ages are those of the protocol in force', () =>
		expect(said('calcaneal-apophysitis', 'ages').map(({ params }) => params)).toEqual([
			{
				fromYears: protocol.value('conditions.calcaneal-apophysitis.ageMinYears'),
				toYears: protocol.value('conditions.calcaneal-apophysitis.ageMaxYears'),
			},
		]))
})
