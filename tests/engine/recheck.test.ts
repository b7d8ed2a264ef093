/** The re-check: what it asks whatever was signed, what it never offers, what follows from trouble. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { settledAsProposed } from '../../electron/command/demo/visits.ts'
import { assess } from '../../shared/engine/assess.ts'
import { addDays } from '../../shared/engine/plain/days.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type Asked, askedSince, type LastVisit } from '../../shared/engine/recheck/asked.ts'
import { beginRecheck } from '../../shared/engine/recheck/begin.ts'
import { planSince } from '../../shared/engine/recheck/changed.ts'
import { offeredUnchanged } from '../../shared/engine/recheck/offered.ts'
import { withUnchanged } from '../../shared/engine/recheck/take-over.ts'
import { unansweredSince } from '../../shared/engine/recheck/unanswered.ts'
import { type ClubConsent, clubFields } from '../../shared/engine/report/club.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { takenGroups, troubles } from '../../shared/engine/visit/terms.ts'
import { type Visit, visitSchema } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'
import { wholeVisit } from './random-visit.ts'

const protocol = openProtocol()
const signed = (visit: Visit): LastVisit => {
	const assessment = assess(visit)
	return { visit, assessment, decisions: settledAsProposed(assessment) }
}
const later = (visit: Visit) => addDays(visit.visitDate, 60)
const idsOf = (asked: readonly Asked[]) => asked.map(({ id }) => id)
/** A re-check as it begins. */
const begun = (last: LastVisit, parts: object = {}): Visit => ({
	format: 'lastwright-visit',
	version: 1,
	player: last.visit.player,
	visitDate: later(last.visit),
	screening: {},
	...beginRecheck(last, later(last.visit), protocol),
	...parts,
})
const examples = { numRuns: 60 }
const everyVisit = (holds: (last: LastVisit) => void) =>
	fc.assert(
		fc.property(wholeVisit, (visit) => holds(signed(visit))),
		examples,
	)
const adult = read(json('visit-adult.json'))
const minor = read(json('visit-adolescent.json'))

describe('whatever was signed', () => {
	it('asks the warning questions, each hold and what came of a doctor', () =>
		everyVisit((last) => {
			const asked = idsOf(askedSince(last, later(last.visit), protocol))
			expect(asked).toContain('warning')
			const { gate } = last.assessment.prescription ?? {}
			for (const part of ['person', 'left', 'right'] as const)
				for (const { rule, what } of gate?.[part].holds ?? [])
					expect(asked).toContain(`hold.${rule}.${part}.${what}`)
			const actions = [last.assessment.screening, gate?.person, gate?.left, gate?.right]
			if (actions.some((one) => one && one.action !== 'proceed')) expect(asked).toContain('letter')
		}))
	it('begins a visit of the schema that answers nothing, and its holds still hold', () =>
		everyVisit((last) => {
			const visit = begun(last)
			expect(visitSchema.parse(visit)).toEqual(visit)
			const now = assess(visit, [last.visit])
			const { since } = visit
			const lists = [since?.done, since?.bought, since?.worn]
			const rows = lists.reduce((sum, list) => sum + (list?.length ?? 0), 0)
			for (const path of ['asksLetter', 'asksWearingIn', 'asksSeason'] as const)
				if (since?.[path]) expect(unansweredSince(visit).length).toBeGreaterThan(0)
			expect(unansweredSince(visit).length).toBeGreaterThanOrEqual(rows)
			expect(visit.screening).toEqual({})
			expect(now.prescription.questions.map(({ id }) => id)).toContain('gate')
		}))
	it('asks about every condition that is not past, and measures the feet of who grows', () =>
		everyVisit((last) => {
			const asked = idsOf(askedSince(last, later(last.visit), protocol))
			for (const [place, { status }] of (last.visit.conditions ?? []).entries())
				expect([place, asked.includes(`condition.${place}`)]).toEqual([place, status !== 'past'])
			for (const { status } of begun(last).conditions ?? []) expect(status ?? 'past').toBe('past')
		}))
})

describe('what may be taken as it was', () => {
	const last = signed(adult)
	const offered = (parts: object) => offeredUnchanged(begun(last, parts), last.visit, protocol)
	it('is what the last visit holds', () => {
		expect(offered({})).toEqual(takenGroups.filter((group) => adult[group] !== undefined))
	})
	it('is never what changed beyond error, whatever was measured', () =>
		everyVisit((before) => {
			const { visit } = before
			const reading = [visit.feet?.left?.heelToToeMm ?? []].flat()[0]
			if (reading === undefined || reading + 25 > 400) return
			const feet = { left: { heelToToeMm: reading + 25 } }
			const now = begun(before, { feet })
			expect(offeredUnchanged(now, visit, protocol)).not.toContain('feet')
		}))
	it('is no foot where a trouble or a new condition speaks against it, and none of who grows', () => {
		const worn = [{ what: 'insert', side: 'both', trouble: ['too-tight'] }]
		expect(offered({ since: { visitDate: adult.visitDate, worn } })).not.toContain('feet')
		const news = [{ condition: 'bunionette', side: 'left', status: 'current' }]
		for (const group of ['feet', 'ankles', 'posture'] as const)
			expect(offered({ conditions: news })).not.toContain(group)
		const young = signed(minor)
		expect(offeredUnchanged(begun(young), minor, protocol)).toEqual(minor.play ? ['play'] : [])
	})
	it('is taken and taken back without what was typed', () => {
		const typed = begun(last, { body: { massKg: 81.5 } })
		const taken = withUnchanged(typed, adult, ['feet', 'body'])
		expect(taken.feet).toEqual(adult.feet)
		expect(taken.body).toEqual({ ...adult.body, massKg: 81.5 })
		expect(withUnchanged(taken, adult, [])).toEqual(typed)
	})
	it('is called for again where something told later speaks against it', () => {
		const taken = withUnchanged(begun(last), adult, ['feet'])
		const codes = (visit: Visit) => assess(visit, [adult]).findings.map(({ code }) => code)
		expect(codes(taken)).toContain('recheck.not-measured-again')
		expect(codes(taken)).not.toContain('recheck.measure-again')
		const screening = { injury: { side: 'left' as const } }
		expect(codes({ ...taken, screening })).toContain('recheck.measure-again')
	})
})

describe('a trouble', () => {
	const last = signed(adult)
	const told = (...trouble: string[]): Visit =>
		visitSchema.parse({
			...withUnchanged(begun(last), adult, ['play', 'feet', 'ankles', 'posture', 'body']),
			since: {
				...begun(last).since,
				worn: [{ what: 'insert', side: 'left', trouble }],
			},
		})
	it.each(troubles)(
		'%s stands under one question, with its basis, and nothing is as before',
		(one) => {
			const { findings, prescription } = assess(told(one), [adult])
			const finding = findings.find(({ code }) => code === 'recheck.insert-trouble')
			expect(finding?.basis.unsourced).toBe(true)
			const under = prescription.questions.filter(({ because }) =>
				because.includes(finding?.id ?? ''),
			)
			// what is held is read at the gate
			const isHeld = ['wound', 'numbness'].includes(one)
			expect(under.map(({ id }) => id)).toEqual([isHeld ? 'gate' : 'insert'])
			expect(under[0]?.unchanged).toBe(false)
		},
	)
	it('of feeling or skin is the warning sign of its question, whatever that was answered', () => {
		const no = { reducedSensation: false, activeFootUlcer: false }
		for (const [one, key] of [
			['numbness', 'reducedSensation'],
			['wound', 'activeFootUlcer'],
		] as const) {
			const { screening } = assess({ ...told(one), screening: no }, [adult])
			const asked = assess({ ...begun(last), screening: { ...no, [key]: true } }, [adult])
			expect(screening.action).toBe(asked.screening.action)
			expect(screening.action).not.toBe('proceed')
		}
		expect(assess({ ...told('none'), screening: no }, [adult]).screening.action).toBe('proceed')
	})
	it('holds at the visit after it too, until its outcome is recorded', () => {
		const first = told('numbness')
		const next: Visit = { ...adult, visitDate: later(first), screening: {} }
		const rules = ({ prescription: { gate } }: ReturnType<typeof assess>) =>
			[gate.person, gate.left, gate.right].flatMap(({ holds }) => holds.map(({ rule }) => rule))
		const then = rules(assess(first, [adult]))
		expect(then.length).toBeGreaterThan(0)
		expect(rules(assess(next, [adult, first]))).toEqual(expect.arrayContaining(then))
	})
	it('leaves no part of a shoe as it was', () => {
		const visit = told('heel-slips')
		const assessment = assess(visit, [adult])
		const { stays } = planSince(visit, assessment, settledAsProposed(assessment))
		expect(stays.filter((id) => !['complaint', 'review'].includes(id))).toEqual([])
	})
})

describe('its pages', () => {
	const last = signed(minor)
	const visit = begun(last, {
		feet: minor.feet,
		conditions: [
			{
				condition: 'calcaneal-apophysitis',
				side: 'left',
				status: 'recovering',
				painNow: 1,
				painWorst: 3,
				daysOff: 4,
				sessionsMissed: 2,
			},
		],
	})
	const assessment = assess(visit, [minor])
	const input = {
		visit,
		earlier: [minor],
		assessment,
		decisions: settledAsProposed(assessment),
		clinic,
		signedAt: '2027-03-21T10:00:00.000Z',
		draft: false,
		on: visit.visitDate,
	}
	const textOf = (kind: 'player' | 'guardian' | 'appointment') =>
		textsIn(kinds[kind].compose(input)).join('\n')
	it('tell player, guardian and clinician what was told, and that advice worked to nobody', () => {
		expect(textOf('player')).toContain('Since we saw you on')
		expect(textOf('guardian')).toContain(`Since we saw ${minor.player.givenName} on`)
		for (const kind of ['player', 'guardian', 'appointment'] as const) {
			expect(textOf(kind)).toContain('4 days off sport, 2 sessions missed')
			expect(textOf(kind)).not.toMatch(/\b(worked|helped|success|thanks to)/i)
		}
	})
	it('leave the club without pain, days off and sessions missed', () => {
		const consent: ClubConsent = {
			id: 'C-7',
			purpose: 'coach',
			decision: 'permit',
			given: '2027-01-20',
			until: '2027-12-31',
		}
		const told = clubFields(input, consent, { on: input.on, purpose: 'coach' })
		expect(JSON.stringify(told)).not.toMatch(/pain|days off|missed|worn/)
	})
})
