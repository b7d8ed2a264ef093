/** What referrals proved to be, and what was found later of players whom nobody was asked about. */
import { type Action, actions } from '../../engine/findings/assessment.ts'
import { mostUrgent } from '../../engine/prescription/urgency.ts'
import { heardOf } from '../recall/referral.ts'
import { type Asking, type Course, type Look, looksOf, type Mark, type Seen } from './seen.ts'

/** The most urgent care that a visit asked for, by its signs or by its letter. */
const askedAt = ({ assessment: { screening }, decisions }: Seen): Action =>
	mostUrgent([screening.action, decisions.letter?.urgency ?? 'proceed'])
const results = ['confirmed', 'recovered', 'excluded'] as const
type Result = (typeof results)[number]

/** Outcomes of a referral: of its own signs, by what this visit, later ones and others wrote. */
function resultsOf({ then, later }: Look, { written }: Course): Result[] {
	const on = then.visit.visitDate
	const rules = then.assessment.screening.items
		.filter(({ state }) => state === 'yes')
		.map(({ code, id }) => code ?? id)
	const isOfOthers = askedAt(then) === 'proceed'
	const outcomes = [then, ...later]
		.flatMap(({ visit }) => visit.outcomes ?? [])
		.filter((outcome) => outcome.on >= on && (isOfOthers || rules.includes(outcome.rule)))
	const ids = isOfOthers ? [then, ...later] : [then]
	const heard = ids.flatMap(({ visitId }) => {
		const entry = heardOf(visitId, written)?.entry
		return entry?.what === 'outcome' ? [entry.result] : []
	})
	return [...outcomes.map(({ result }) => result), ...heard]
}
function cellOf(look: Look, course: Course): string {
	const found = resultsOf(look, course)
	const result = results.find((each) => found.includes(each))
	if (result) return result
	const { later, then } = look
	if (askedAt(then) === 'proceed') return later.length > 0 ? 'nothing' : 'missing'
	const said = later.flatMap(({ visit: { since } }) => since?.letter ?? [])[0]
	return said === 'answered' ? 'answered' : 'missing'
}
/** By the care that was asked for, at the first visit of the period that asked for it. */
export function referralMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking)
	return actions.flatMap((row): Mark[] => {
		const look = looks.find(({ then }) => askedAt(then) === row)
		return look ? [{ table: 'referral', row, cells: [cellOf(look, course)] }] : []
	})
}
