/** Who is due, and which referrals nobody has heard from: whatever was signed and answered. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clinicalWord } from '../../shared/desk/outbox/message.ts'
import type { RecallRecord } from '../../shared/desk/recall/answer.ts'
import { mayAnswer } from '../../shared/desk/recall/answer.ts'
import { duesOfSeason, duesOfVisit } from '../../shared/desk/recall/due.ts'
import { type Due, dueKinds, keyOf } from '../../shared/desk/recall/item.ts'
import { chosenLines, countsOf } from '../../shared/desk/recall/lines.ts'
import { type FollowUp, notHeard, referredIn } from '../../shared/desk/recall/referral.ts'
import { reminderPage } from '../../shared/desk/recall/reminder.ts'
import { mondayOf, standingOf, weekOf } from '../../shared/desk/recall/standing.ts'
import { isHeld } from '../../shared/engine/facts/held.ts'
import { addDays, dayNumber } from '../../shared/engine/plain/days.ts'
import { settleAll } from '../../shared/engine/prescription/answers.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Outcome, Visit } from '../../shared/engine/visit/visit.ts'
import { clinic } from '../demo.ts'
import { brokenAnkle, outcomeOf, visitOf } from './gate-visit.ts'
import { assessed } from './laws/case.ts'
import { drawnVisits } from './laws/visits.ts'

const runs = 60
const signedAs = (visit: Visit, decide: (settled: Decisions) => Decisions = (all) => all) => {
	const assessment = assessed(visit)
	const settled = settleAll(noDecisions, assessment.prescription, 'Not asked that day.')
	return { visit, assessment, decisions: decide(settled) }
}
/** The question of the review is left out, by the clinician or because it stayed open. */
const withoutReview = [
	(all: Decisions): Decisions => all,
	(): Decisions => noDecisions,
	(all: Decisions): Decisions => ({
		...all,
		answers: (all.answers ?? []).map((answer) =>
			answer.question === 'review'
				? { question: 'review', choice: 'set-aside', why: 'rings us', of: answer.of }
				: answer,
		),
	}),
] as const

describe('what a signed visit holds dates for', () => {
	it('never leaves out a player whom danger holds, whatever became of the questions', () => {
		let held = 0
		fc.assert(
			fc.property(drawnVisits, fc.constantFrom(...withoutReview), ({ visit }, decide) => {
				const signed = signedAs(visit, decide)
				const { gate } = signed.assessment.prescription
				const isOpen = [gate.person, gate.left, gate.right].some(({ holds }) => holds.length > 0)
				if (!isOpen) return
				held += isHeld(gate, 'sport') ? 1 : 0
				expect(duesOfVisit('v1', signed).map(({ kind }) => kind)).toContain('review')
			}),
			{ numRuns: runs },
		)
		expect(held).toBeGreaterThan(5)
	})
	it('keeps the day of danger where a pair runs out before it, and names no day twice', () => {
		const signed = signedAs(visitOf(brokenAnkle, { footwear: [{ id: 'p1', sole: 'turf' }] }))
		const { prescription } = signed.assessment
		const pair = {
			...prescription.owned[0]!,
			id: 'p1',
			verdict: 'replace',
			by: '2027-01-21',
		} as const
		const owned = { by: 'owned' as const, date: '2027-01-21', because: [] }
		const gate = { by: 'gate' as const, date: '2027-01-23', because: [] }
		const daysOf = (reviewAsked: typeof prescription.reviewAsked) =>
			duesOfVisit('v1', {
				...signed,
				assessment: {
					...signed.assessment,
					prescription: { ...prescription, owned: [pair], reviewAsked, review: owned },
				},
			}).map(({ kind, on }) => `${kind} ${on}`)
		expect(daysOf([owned, gate])).toEqual(['review 2027-01-23', 'pair 2027-01-21'])
		expect(daysOf([owned])).toEqual(['pair 2027-01-21'])
	})
	it('makes up no date, and says each thing once', () => {
		fc.assert(
			fc.property(drawnVisits, ({ visit }) => {
				const signed = signedAs(visit)
				const dues = duesOfVisit('v1', signed)
				const kept = JSON.stringify(signed)
				for (const { on } of dues) expect(kept).toContain(`"${on}"`)
				for (const { on } of dues) expect(on >= visit.visitDate).toBe(true)
				expect(new Set(dues.map(keyOf)).size).toBe(dues.length)
			}),
			{ numRuns: runs },
		)
	})
	it('plans no season that danger holds, and none that ended before the newest visit', () => {
		const plan = { record: 'p', to: '2027-05-01', isUpToDate: false, isHeld: false }
		expect(duesOfSeason({ ...plan, isHeld: true }, '2027-01-20')).toEqual([])
		expect(duesOfSeason(plan, '2027-06-01')).toEqual([])
		expect(duesOfSeason(plan, '2027-01-20')).toMatchObject([{ kind: 'season', on: '2027-01-20' }])
		expect(duesOfSeason({ ...plan, isUpToDate: true }, '2027-01-20')).toMatchObject([
			{ kind: 'season', on: '2027-05-01' },
		])
	})
})

const today = '2027-01-27'
const day = fc.integer({ min: -60, max: 60 }).map((days) => addDays(today, days))
const due = fc.record({
	kind: fc.constantFrom(...dueKinds),
	from: fc.constantFrom('v1', 'v2'),
	on: day,
})
const answer = fc.oneof(
	fc.record({ what: fc.constant('seen' as const), on: day }),
	fc.record({ what: fc.constant('booked' as const), on: day }),
	fc.record({ what: fc.constant('wait' as const), until: day }),
	fc.constantFrom({ what: 'not-needed' as const }, { what: 'due' as const }),
)
const recordOf = (item: Due, given: RecallRecord['answer']): RecallRecord => ({
	playerId: 'a',
	item,
	answer: given,
	by: 'Invented Desk',
	at: '2027-01-26T09:00:00.000Z',
})
describe('how what is due stands', () => {
	it('an item goes out of sight only by an answer that ends it, and about that very item', () => {
		fc.assert(
			fc.property(due, due, answer, (item, other, given) => {
				const answers = new Map([[keyOf(other), recordOf(other, given)]])
				const [stands] = standingOf([item], answers, today)
				const isAbout = keyOf(item) === keyOf(other)
				const ends = given.what === 'seen' || given.what === 'not-needed'
				expect(stands?.standing === 'ended').toBe(isAbout && ends)
				if (!isAbout) expect(stands).toMatchObject({ standing: 'due', day: item.on })
				if (isAbout && given.what === 'booked' && given.on < today)
					expect(stands?.standing).toBe('due')
				if (isAbout && given.what === 'wait' && given.until <= today)
					expect(stands?.standing).toBe('due')
			}),
		)
	})
	it('a newer visit asks anew: what was answered about an older one does not reach it', () => {
		const older = { kind: 'review' as const, from: 'v1', on: '2027-01-20' }
		const answers = new Map([[keyOf(older), recordOf(older, { what: 'not-needed' })]])
		expect(standingOf([{ ...older, from: 'v2' }], answers, today)[0]?.standing).toBe('due')
		expect(standingOf([{ ...older, on: '2027-01-21' }], answers, today)[0]?.standing).toBe('due')
	})
	it('the desk ends no review without a visit', () => {
		fc.assert(
			fc.property(due, answer, (item, given) => {
				const ends = given.what === 'seen' || given.what === 'not-needed'
				expect(mayAnswer('reception', item, given)).toBe(!(item.kind === 'review' && ends))
				expect(mayAnswer('student', item, given)).toBe(false)
				expect(mayAnswer('clinician', item, given)).toBe(true)
			}),
		)
	})
	it('a week begins on its Monday, and what is before today is overdue', () => {
		fc.assert(
			fc.property(day, (date) => {
				// 5 January 1970 was a Monday
				expect((dayNumber(mondayOf(date)) - 4) % 7).toBe(0)
				expect(dayNumber(date) - dayNumber(mondayOf(date))).toBeLessThan(7)
				expect(weekOf(date, today) === 'overdue').toBe(date < today)
			}),
		)
	})
	it('every line that is not ended is shown once, by day, and counted in one place at most', () => {
		fc.assert(
			fc.property(fc.array(fc.array(due, { maxLength: 4 }), { maxLength: 12 }), (all) => {
				const lines = all.map((dues, at) => ({
					playerId: String(at),
					club: undefined,
					isMinor: at % 2 === 0,
					clinician: 'A',
					items: standingOf(dues, new Map(), today),
				}))
				const shown = chosenLines(lines, {}, today)
				expect(shown.length).toBe(all.filter((dues) => dues.length > 0).length)
				expect(shown.map((line) => line.day)).toEqual(shown.map((line) => line.day).toSorted())
				const { overdue, thisWeek } = countsOf(lines, today)
				expect(overdue).toBe(shown.filter(({ week }) => week === 'overdue').length)
				expect(thisWeek).toBe(shown.filter(({ week }) => week === mondayOf(today)).length)
			}),
		)
	})
})

const friday = '2027-01-22'
const monday = '2027-01-25'
const broken = (more: Partial<Visit> = {}): Visit =>
	visitOf(brokenAnkle, { visitDate: friday, ...more })
const referral = referredIn('v1', signedAs(broken()))
const well = (visitDate: string, outcomes: Outcome[] = []) =>
	referredIn(visitDate, signedAs(visitOf({}, { visitDate, outcomes })))
const note = (entry: FollowUp['entry'], followUpId = 'f1'): FollowUp => ({
	followUpId,
	playerId: 'a',
	visitIds: ['v1'],
	entry,
	by: 'Invented Clinician',
	at: '2027-01-25T09:00:00.000Z',
})
const outcome = (on: string) =>
	({
		what: 'outcome',
		result: 'excluded',
		found: 'no fracture',
		how: 'film',
		from: 'radiology',
		on,
	}) as const
const rule = referral.signs[0]?.rule ?? ''

describe('a referral that nobody has heard from', () => {
	it('stands from the next working day on', () => {
		expect(referral.asked).toBe('same-day')
		for (const before of [friday, '2027-01-23', '2027-01-24'])
			expect(notHeard([referral], [], before)).toBeUndefined()
		expect(notHeard([referral], [], monday)?.visits).toEqual([referral])
	})
	it('is ended by a written outcome alone, and stands again where that is taken back', () => {
		const tried = note({ what: 'try', says: 'rang, no answer', again: '2027-01-26' })
		expect(notHeard([referral], [tried], '2027-03-01')?.tries).toEqual([tried])
		const heard = note(outcome(monday), 'f2')
		expect(notHeard([referral], [tried, heard], monday)).toBeUndefined()
		const back = note({ what: 'taken-back', of: 'f2', why: 'of another player' }, 'f3')
		expect(notHeard([referral], [tried, heard, back], monday)?.visits).toEqual([referral])
	})
	it('is not silenced by another visit, only by the outcome of every sign in one', () => {
		expect(notHeard([referral, well('2027-01-26')], [], '2027-01-28')?.visits).toEqual([referral])
		const other = outcomeOf('screening.fever', [], { on: '2027-01-26' })
		const right = outcomeOf(rule, [], { on: '2027-01-26', side: 'right' })
		for (const wrong of [other, right])
			expect(notHeard([referral, well('2027-01-26', [wrong])], [], '2027-01-28')).toBeDefined()
		const confirmed = outcomeOf(rule, [], { on: '2027-01-26', result: 'confirmed' })
		expect(notHeard([referral, well('2027-01-26', [confirmed])], [], '2027-01-28')).toBeUndefined()
	})
	it('of a sign on both limbs is ended once each of them is answered', () => {
		const both = { ...referral, signs: [{ rule, side: 'both' as const, says: 'Both' }] }
		const of = (side: 'left' | 'right' | 'both') =>
			outcomeOf(rule, [], { on: '2027-01-26', side, result: 'excluded' })
		const heard = (...outcomes: Outcome[]) =>
			notHeard([both, well('2027-01-26', outcomes)], [], '2027-01-28') === undefined
		for (const side of ['left', 'right'] as const) expect(heard(of(side)), side).toBe(false)
		expect([heard(of('both')), heard(of('left'), of('right'))]).toEqual([true, true])
	})
	it('is one where the letter asks for more than the signs, too', () => {
		const asked = signedAs(visitOf({}), (all) => ({ ...all, letter: { urgency: 'same-day' } }))
		expect(notHeard([referredIn('v1', asked)], [], '2027-01-21')?.asked).toBe('same-day')
	})
	it('stands whatever was drawn, while nothing is written', () => {
		let urgent = 0
		fc.assert(
			fc.property(drawnVisits, ({ visit }) => {
				const signed = signedAs({ ...visit, outcomes: [] })
				const later = addDays(visit.visitDate, 5)
				const isAsked = ['imaging', 'same-day', 'emergency'].includes(
					signed.assessment.screening.action,
				)
				urgent += isAsked ? 1 : 0
				expect(notHeard([referredIn('v1', signed)], [], later) !== undefined).toBe(isAsked)
			}),
			{ numRuns: runs },
		)
		expect(urgent).toBeGreaterThan(5)
	})
})

it('a reminder asks to make an appointment and says nothing clinical', () => {
	fc.assert(
		fc.property(fc.boolean(), fc.option(day, { nil: undefined }), (isOwn, by) => {
			const page = reminderPage({
				clinic: { ...clinic, name: 'Invented Clinic', phone: '555 0142' },
				recipient: 'Rae Ashdown',
				player: 'Tui Ashdown',
				isOwn,
				by,
				on: today,
				at: '2027-01-27T09:00:00.000Z',
			})
			const texts = textsIn({ title: page.title, subject: page.subject, blocks: page.blocks })
			for (const text of texts) expect(clinicalWord(text)).toBeUndefined()
			expect(texts.join(' ')).toContain('555 0142')
		}),
		{ numRuns: 20 },
	)
})
