/** The laws of the plan over random visits; each is also shown a plan that breaks it. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Assessment } from '../../shared/engine/findings/assessment.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { json, read } from '../demo.ts'
import { type Case, caseOf } from './laws/case.ts'
import { brokenBy, laws } from './laws/laws.ts'
import { raisesRead } from './laws/printed.ts'
import { drawnVisits } from './laws/visits.ts'

it('every plan keeps every law', () => {
	fc.assert(
		fc.property(drawnVisits, ({ visit, earlier }) => {
			expect(brokenBy(caseOf(visit, earlier))).toEqual([])
		}),
		{ numRuns: 60 },
	)
})
const demo = (name: string, more: object = {}): Case =>
	caseOf(read({ ...json(`${name}.json`), ...more }))
const adolescent = demo('visit-adolescent')
const held = demo('visit-adult', { screening: { breathlessOrChestPain: true } })
type Spoil = (assessment: Assessment) => void
/** A law, and what breaks it. */
const spoiled: Readonly<Record<string, [Case, Spoil]>> = {
	'a visit with a gate is signed once it is also said what was done': [
		adolescent,
		(made) => {
			made.prescription.gate.person.state = 'not-established'
			made.prescription.gate.person.unasked = ['fever']
			made.prescription.questions = made.prescription.questions.filter(({ id }) => id !== 'gate')
		},
	],
	'ids are unique': [adolescent, (made) => made.findings.push(made.findings[0]!)],
	'each caution is read under one question that is asked': [
		adolescent,
		(made) => made.findings.push({ ...made.findings[0]!, id: 'x.y', level: 'caution' }),
	],
	'left less right is the leg-length correction in every pair that is worn': [
		adolescent,
		(made) => {
			for (const { left } of made.prescription.raise.pairs) left.addMm += 1
		},
	],
	'the room and the plan give one figure': [
		adolescent,
		(made) => {
			for (const { left } of made.prescription.raise.pairs) left.addMm += 1
		},
	],
	'a raise keeps within its pair': [
		adolescent,
		(made) => {
			made.prescription.raise.pairs[0]!.left.addedUnderHeelMm = 13
		},
	],
	'every element keeps within its own range': [
		adolescent,
		(made) => {
			const cup = made.insert.left.elements.find(({ range }) => range)!
			cup.value = cup.range![1] + 1
		},
	],
	'no feature is sought and avoided in one pair, nor two opposites': [
		adolescent,
		(made) => {
			const [pair] = made.prescription.pairs
			pair!.seek = ['wide-base']
			pair!.avoid = ['wide-base']
		},
	],
	'a pair judged keep lies within measuring error of the band it was told': [
		demo('visit-adolescent', {
			footwear: [{ id: 'p1', sole: 'firm-ground', insideLengthMm: 200 }],
		}),
		(made) => {
			made.prescription.owned[0]!.verdict = 'keep'
		},
	],
	'more danger never lowers the gate': [
		adolescent,
		(made) => {
			made.prescription.gate.person.action = 'emergency'
			made.prescription.gate.left.action = 'emergency'
			made.prescription.gate.right.action = 'emergency'
		},
	],
	'mirror in, mirror out': [
		adolescent,
		(made) => {
			made.prescription.raise.pairs[0]!.left.addMm += 2
		},
	],
	'nothing held appears in any output of any kind': [
		held,
		(made) => {
			const raised = { addMm: 4, madeBy: 'wedge', addedUnderHeelMm: 4 } as const
			made.prescription.raise.pairs = [
				{ pair: 'role.match', offsetFrom: 'unknown', left: raised, right: raised, limits: [] },
			]
		},
	],
	'the review comes after the visit': [
		adolescent,
		(made) => {
			made.prescription.review = { date: '2000-01-01', because: [] }
		},
	],
	'at most three priorities, ranked, none of them a purchase that is held': [
		held,
		(made) =>
			made.prescription.priorities.push({
				rank: 9,
				who: 'player',
				when: '2027-03-01',
				because: [],
				...state('priority.buy', { role: 'match' }),
			}),
	],
	'every number is one': [
		adolescent,
		(made) => {
			made.sizing.fitLengthMm = Number.NaN
		},
	],
}
describe('a law', () => {
	it.each(Object.entries(spoiled))('sees what breaks it: %s', (law, [one, spoil]) => {
		expect(laws[law]!(one)).toEqual([])
		const assessment = structuredClone(one.assessment)
		spoil(assessment)
		expect(laws[law]!({ ...one, assessment })).not.toEqual([])
	})
	it('reads the raises that pages print', () => {
		expect(raisesRead(adolescent)).toBeGreaterThan(2)
	})
})
