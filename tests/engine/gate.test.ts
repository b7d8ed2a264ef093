/** What is held, for whom, since when, and what ends it. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { coreQuestions } from '../../shared/engine/screening/core-questions.table.ts'
import { holdables } from '../../shared/engine/visit/holdables.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { coreQuestionNames } from '../../shared/engine/words/en/gate.ts'
import {
	aged,
	askedAndNo,
	brokenAnkle,
	gateAt,
	gated,
	heldIn,
	outcomeOf,
	visitOf,
} from './gate-visit.ts'

const everythingOfPlayer = ['impact', 'match', 'purchase', 'raise', 'season', 'shelf', 'sport']
const everythingOfLimb = ['exercise', 'insert', 'test', 'weight']

describe('what is held', () => {
	it('a suspected fracture: the player, and the limb with its weight', () => {
		const { person, left, right } = heldIn(gateAt(visitOf(brokenAnkle)))
		expect(person).toEqual(everythingOfPlayer)
		expect(left).toEqual(everythingOfLimb)
		expect(right).toEqual([])
	})
	it('a sign of no place is of the whole person and of both limbs', () => {
		const gate = gateAt(visitOf({ fever: true }))
		expect(heldIn(gate).person).toEqual(everythingOfPlayer)
		expect(heldIn(gate).left).toEqual(heldIn(gate).right)
		expect(gate.left.action).toBe('same-day')
	})
	it('a general question takes the side of its group', () => {
		const gate = gateAt(
			visitOf({ boneStressHighRisk: true, boneStress: { side: 'right', site: 'navicular' } }),
		)
		expect(heldIn(gate).left).toEqual([])
		expect(heldIn(gate).right).toEqual(everythingOfLimb)
	})
	it('a minor unrelated sign holds nothing', () => {
		for (const answers of [{ morningStiffness: true }, { exertionalTightness: true }])
			expect(heldIn(gateAt(visitOf(answers)))).toEqual({ person: [], left: [], right: [] })
	})
	it.each([
		['suddenLegLengthDifference', 'raise'],
		['rigidFlatFoot', 'insert'],
	] as const)('%s holds %s alone', (sign, what) => {
		const { person, left, right } = heldIn(gateAt(visitOf({ [sign]: true })))
		expect([...new Set([...person, ...left, ...right])]).toEqual([what])
	})
	it('pain at the limit holds matches and impact, below it nothing', () => {
		const withPain = (painWorst: number) =>
			gateAt(
				visitOf(askedAndNo, {
					conditions: [{ condition: 'calf-strain', side: 'left', status: 'current', painWorst }],
				}),
			)
		expect(heldIn(withPain(7)).person).toEqual(['impact', 'match'])
		expect(heldIn(withPain(6)).person).toEqual([])
	})
	it.each(['current', 'recovering', 'past'] as const)('a %s navicular fracture', (status) => {
		const gate = gateAt(
			visitOf(
				{},
				{ conditions: [{ condition: 'navicular-stress-fracture', side: 'left', status }] },
			),
		)
		const expected = {
			current: [everythingOfPlayer, everythingOfLimb],
			recovering: [['impact', 'match'], []],
			past: [[], []],
		}[status]
		expect([heldIn(gate).person, heldIn(gate).left]).toEqual(expected)
	})
	it('an operation waits for the surgeon, and only for the surgeon', () => {
		const operated = (clearedBySurgeon?: boolean, visitDate = '2027-01-20') =>
			visitOf(
				{},
				{
					visitDate,
					conditions: [
						{
							condition: 'foot-or-ankle-surgery',
							side: 'right',
							status: 'recovering',
							...(clearedBySurgeon === undefined ? {} : { clearedBySurgeon }),
						},
					],
				},
			)
		const waiting = gateAt(operated())
		expect(waiting.person.holds.map(({ until }) => until)).toContain('surgeon')
		expect(heldIn(gateAt(operated(true))).person).toEqual([])
		// the surgeon's word, recorded with the operation, ends what an earlier visit held
		expect(heldIn(gateAt(operated(true, '2027-03-01'), [operated()])).person).toEqual([])
		expect(heldIn(gateAt(visitOf({}, { visitDate: '2027-03-01' }), [operated()])).person).toContain(
			'sport',
		)
	})
})
describe('outcomes', () => {
	const all = [...holdables]
	const withOutcome = (more: Parameters<typeof outcomeOf>[2] = {}, lifts = all) =>
		heldIn(
			gateAt(visitOf(brokenAnkle, { outcomes: [outcomeOf('screening.ottawa-met', lifts, more)] })),
		)
	it('ends what it lifts; sport and matches by the treating doctor alone', () => {
		expect(withOutcome()).toEqual({ person: ['match', 'sport'], left: [], right: [] })
		expect(withOutcome({ treatingDoctorClears: true })).toEqual({ person: [], left: [], right: [] })
		expect(withOutcome({}, ['weight']).left).toEqual(['exercise', 'insert', 'test'])
	})
	it.each([
		['another rule', { rule: 'screening.fever' }],
		['another side', { side: 'right' }],
		['no side', { side: 'none' }],
		['a day after the visit', { on: '2027-01-21' }],
		['a day before the injury', { on: '2027-01-18' }],
	] as const)('%s ends nothing, and that is said', (_, more) => {
		const outcomes = [
			outcomeOf('screening.ottawa-met', all, { treatingDoctorClears: true, ...more }),
		]
		const visit = visitOf(brokenAnkle, { outcomes })
		expect(heldIn(gateAt(visit))).toEqual(heldIn(gateAt(visitOf(brokenAnkle))))
		expect(gated(visit).findings.map(({ code }) => code)).toContain('screening.ends-nothing')
	})
	it('a sign of no place: one limb by its side, the player as a whole', () => {
		const clot = (side: 'left' | 'none') =>
			heldIn(
				gateAt(
					visitOf(
						{ calfSuspicion: true },
						{
							outcomes: [
								outcomeOf('screening.calfSuspicion', all, { side, treatingDoctorClears: true }),
							],
						},
					),
				),
			)
		expect(clot('left').left).toEqual([])
		expect(clot('left').right).toEqual(['exercise', 'insert', 'test'])
		expect(clot('left').person).toEqual(everythingOfPlayer)
		expect(clot('none')).toEqual({ person: [], left: [], right: [] })
	})
	it('a sign that holds nothing ends where it was excluded', () => {
		const asked = { morningStiffness: true }
		const excluded = outcomeOf('screening.morningStiffness', [], { side: 'none' })
		expect(gateAt(visitOf(asked)).person.action).toBe('letter')
		expect(gateAt(visitOf(asked, { outcomes: [excluded] })).person.action).toBe('proceed')
	})
})
describe('carried to the next visit', () => {
	const first = visitOf(brokenAnkle)
	const later = (outcomes: ReturnType<typeof outcomeOf>[] = [], answers = {}) =>
		visitOf(answers, { visitDate: '2027-02-10', outcomes })
	it('stands with the day on which it began, and a finding says so', () => {
		const { gate, findings } = gated(later(), [first])
		expect(heldIn(gate).left).toEqual(everythingOfLimb)
		expect(new Set(gate.left.holds.map(({ since }) => since))).toEqual(new Set(['2027-01-20']))
		expect(gate.left.because).toEqual(['screening.carried.ottawa-met.left'])
		expect(findings.map(({ id }) => id)).toContain('screening.carried.ottawa-met.left')
	})
	it('ends by an outcome of a later visit, and stays ended', () => {
		const cleared = later([
			outcomeOf('screening.ottawa-met', [...holdables], {
				on: '2027-02-01',
				treatingDoctorClears: true,
			}),
		])
		expect(heldIn(gateAt(cleared, [first])).person).toEqual([])
		const third = visitOf({}, { visitDate: '2027-03-01' })
		expect(heldIn(gateAt(third, [first, cleared])).person).toEqual([])
	})
	it('an earlier outcome does not answer a new injury', () => {
		const outcome = outcomeOf('screening.ottawa-met', [...holdables], {
			on: '2027-02-01',
			treatingDoctorClears: true,
		})
		const again = later([outcome], brokenAnkle)
		const { gate } = gated(again, [first])
		expect(heldIn(gate).left).toEqual(everythingOfLimb)
		expect(new Set(gate.left.holds.map(({ since }) => since))).toEqual(new Set(['2027-02-10']))
	})
})
describe('not established', () => {
	it('names what was not asked, until it is asked or set aside', () => {
		const blank = gateAt(visitOf({}))
		expect(blank.person).toMatchObject({
			state: 'not-established',
			unasked: ['night-pain', 'fever'],
		})
		expect(blank.left.unasked).toEqual(['reduced-sensation'])
		const asked = gateAt(visitOf(askedAndNo))
		expect([asked.person.state, asked.left.state, asked.right.state]).toEqual(
			Array(3).fill('nothing-found'),
		)
		const { nightPain: _, ...rest } = askedAndNo
		const aside = (why: string) =>
			gateAt(visitOf(rest, { coreSetAside: [{ question: 'night-pain', why }] })).person.state
		expect(aside('interpreter not there')).toBe('nothing-found')
		expect(aside(' ')).toBe('not-established')
	})
	it('asks a sore minor for a limp, a new injury for the rest of its rules', () => {
		const sore: Partial<Visit> = {
			conditions: [{ condition: 'calcaneal-apophysitis', side: 'left', status: 'current' }],
		}
		const minor = visitOf(askedAndNo, { ...aged('2015-01-01'), ...sore })
		expect(gateAt(minor).left.unasked).toEqual(['limp'])
		expect(gateAt(minor).right.unasked).toEqual([])
		const hurt = visitOf({
			...askedAndNo,
			injury: { side: 'left', daysAgo: 1, midfootZonePain: true },
		})
		expect(gateAt(hurt).left.unasked).toEqual(['weight-bearing'])
	})
	it('each question has a name', () => {
		expect(coreQuestions.map(({ id }) => id).toSorted()).toEqual(
			Object.keys(coreQuestionNames).toSorted(),
		)
	})
})
it('what the gate names are findings of the assessment, and their ids are unique', () => {
	const visit = visitOf(
		{
			...brokenAnkle,
			fever: true,
			morningStiffness: true,
			neurological: { left: { feltHallux: false } },
		},
		{ visitDate: '2027-02-10' },
	)
	const assessment = assess(visit, [visitOf({ lisfrancSuspected: true })])
	const ids = assessment.findings.map(({ id }) => id)
	const { person, left, right } = assessment.prescription?.gate ?? gateAt(visit)
	expect(
		[...person.because, ...left.because, ...right.because].filter((id) => !ids.includes(id)),
	).toEqual([])
	expect(ids.length).toBe(new Set(ids).size)
})
