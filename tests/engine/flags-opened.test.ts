/** Which questions stand open on the Flags step, and what opened them. */
import { describe, expect, it } from 'vitest'
import { endings, heldBySign, sinceOf } from '../../renderer/screens/assessment/flagsHeld.ts'
import { openedQuestions } from '../../renderer/screens/assessment/flagsOpened.ts'
import { assess } from '../../shared/engine/assess.ts'
import { conditionNames, questionsOf } from '../../shared/engine/conditions/registry.ts'
import { askedAlways, complaints } from '../../shared/engine/screening/complaints.table.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { askedAndNo, brokenAnkle, visitOf } from './gate-visit.ts'

type Recorded = NonNullable<Visit['conditions']>[number]
const having = (...conditions: Recorded[]) => visitOf(askedAndNo, { conditions })
const sesamoid = { condition: 'sesamoid-pain', side: 'left', status: 'current' } as const
const paths = (opened: readonly { path: string }[]) => opened.map(({ path }) => path)

describe('what stands open', () => {
	it('every question that a condition opens can stand on the step', () => {
		const known = [...askedAlways, ...complaints.flatMap(({ opens }) => opens)]
		for (const condition of conditionNames)
			for (const path of questionsOf(condition)) expect(known, condition).toContain(path)
	})
	it('a recorded condition opens its own by itself, on its side and with its name', () => {
		const { byConditions, byComplaint } = openedQuestions(having(sesamoid), [], [])
		expect(paths(byConditions)).toEqual(['screening.boneStressHighRisk', 'screening.boneStress'])
		for (const { by, side } of byConditions) {
			expect(by).toEqual(['sesamoid pain, left'])
			expect(side).toBe('left')
		}
		expect(byComplaint).toEqual([])
	})
	it('both sides where it is on both; none where it has none; a past one opens nothing', () => {
		const right = { ...sesamoid, side: 'right' } as const
		const sides = (visit: Visit) => openedQuestions(visit, [], []).byConditions[0]?.side
		expect(sides(having(sesamoid, right))).toBe('both')
		expect(sides(having({ ...sesamoid, side: 'none' }))).toBeUndefined()
		expect(openedQuestions(having({ ...sesamoid, status: 'past' }), [], []).byConditions).toEqual(
			[],
		)
	})
	it('a complaint unfolds its own, each question once', () => {
		const { byConditions, byComplaint } = openedQuestions(having(sesamoid), ['bone'], [])
		expect(paths(byComplaint)).toEqual(['screening.boneStressLowRisk', 'screening.lowEnergy'])
		const all = [...paths(byConditions), ...paths(byComplaint)]
		expect(new Set(all).size).toBe(all.length)
	})
	it('what is answered stays open; what stands above is not asked twice', () => {
		const answered = visitOf({ ...askedAndNo, calfSuspicion: false, wells: { previousDvt: true } })
		expect(paths(openedQuestions(answered, [], ['screening.calfSuspicion']).byComplaint)).toEqual([
			'screening.wells',
		])
	})
})

describe('what is held, a sign at a time', () => {
	const gate = assess(visitOf(brokenAnkle)).prescription.gate
	it('the sign, what ends it, and since when', () => {
		const [sign, ...more] = heldBySign(gate)
		expect(more).toEqual([])
		expect(sign).toMatchObject({ rule: 'screening.ottawa-met', side: 'left' })
		expect(endings(sign!.holds)[0]).toBe('Sport and matches: until the treating doctor allows it.')
		expect(sinceOf(sign!)).toBe('2027-01-20')
	})
})
