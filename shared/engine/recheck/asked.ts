/**
 * What a re-check asks, and why: from the last signed visit as it was settled, and the day. Warning
 * questions, holds and what came of a letter are asked whatever that visit said.
 */
import { isAdultOn } from '../facts/age.ts'
import type { KeptAssessment } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import { settledPlan } from '../prescription/settled.ts'
import { mostUrgent } from '../prescription/urgency.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Decisions } from '../visit/decisions.ts'
import { bothSides } from '../visit/sides.ts'
import { type ToDoKind, toDoKinds } from '../visit/terms.ts'
import type { Since, Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'

/** A signed visit, as it was signed. */
export interface LastVisit {
	visit: Visit
	assessment: KeptAssessment
	decisions: Decisions
}
type DoneRow = NonNullable<Since['done']>[number]
type WornRow = NonNullable<Since['worn']>[number]
/** One thing to ask, and why it is asked. */
export interface Asked {
	/** 'warning', 'hold.RULE.WHERE', 'done.0', 'worn.insert' */
	id: string
	why: Statement
	/** What of the re-check it opens. */
	opens: Partial<Omit<Since, 'visitDate'>>
}
interface From extends LastVisit {
	plan: SettledPlan
	/** The day of the re-check. */
	on: string
	protocol: Protocol
}
type Part = (from: From) => Asked[]

const warning: Part = () => [{ id: 'warning', why: state('recheck.why-warning'), opens: {} }]
const holds: Part = ({ plan: { gate } }) =>
	(['person', 'left', 'right'] as const).flatMap((part) =>
		gate[part].holds.map(({ what, rule, since }) => ({
			id: `hold.${rule}.${part}.${what}`,
			why: state('recheck.why-hold', { what, since }),
			opens: {},
		})),
	)
/** Whatever was asked of a doctor: a letter, imaging, care the same day. */
function letter({ assessment: { screening }, plan: { gate }, visit }: From): Asked[] {
	const actions = [screening, gate.person, gate.left, gate.right].map(({ action }) => action)
	const action = mostUrgent(actions)
	if (action === 'proceed') return []
	const why = state('recheck.why-letter', { action, on: visit.visitDate })
	return [{ id: 'letter', why, opens: { asksLetter: true } }]
}
const isToDo = (kind: string): kind is ToDoKind => (toDoKinds as readonly string[]).includes(kind)
const sideOf = (sides: readonly string[]): 'left' | 'right' | 'both' | undefined =>
	sides.length === 0 ? undefined : sides.length > 1 ? 'both' : (sides[0] as 'left' | 'right')
/** What a priority was about, as it can be said again. */
function doneRow({ code = '', params = {} }: Partial<Statement>): DoneRow[] {
	const what = code.replace(/^priority\./, '')
	if (!isToDo(what)) return []
	const {
		pairs,
		role,
		sides = [],
	} = params as {
		pairs?: string[]
		role?: DoneRow['role']
		sides?: string[]
	}
	const side = sideOf(sides)
	return [
		{
			what,
			...(pairs && pairs.length > 0 && { pairs: pairs.map((name) => name.slice(0, 80)) }),
			...(role && { role }),
			...(side && { side }),
		},
	]
}
/** Whether the pair that is bought or what is worn inside is asked about already. */
const isAskedBy = ({ what, role }: DoneRow, besides: readonly Asked[]): boolean =>
	besides.some(({ id }) => id === `bought.${role}` || id === `worn.${what}`)
/**
 * The clinician's own actions stand in place of those of the plan, as on its pages. What was to be
 * bought or worn is asked once, with how it went.
 */
const done: Part = (from) => {
	const { plan, decisions, visit } = from
	const { actions } = decisions
	const besides = [...bought(from), ...worn(from)]
	const own = actions.flatMap(({ what }): DoneRow[] => {
		const words = what.trim()
		return words === '' ? [] : [{ what: 'own', words }]
	})
	const planned = plan.priorities.flatMap(doneRow).filter((row) => !isAskedBy(row, besides))
	const rows = own.length > 0 ? own : planned
	return rows.map((row, place) => ({
		id: `done.${place}`,
		why: state('recheck.why-done', { ...row, on: visit.visitDate }),
		opens: { done: [row] },
	}))
}
/** Once for each role, on however many grounds it is worn. */
function bought({ plan: { pairs } }: From): Asked[] {
	const toBuy = pairs.filter(({ means }) => means === 'buy')
	const first = toBuy.filter(({ role }, at) => toBuy.findIndex((pair) => pair.role === role) === at)
	return first.map((pair) => ({
		id: `bought.${pair.role}`,
		why: state('recheck.why-bought', { role: pair.role }),
		opens: { bought: [{ role: pair.role, asked: askedOf(pair) }] },
	}))
}
const askedOf = ({ insideLengthMm, sole, seek, avoid }: SettledPlan['pairs'][number]) =>
	present({ insideLengthMm, sole, seek, avoid })
/** Sides on which something was to be worn inside. */
const wornSides = ({ plan, visit }: From, what: WornRow['what']) =>
	bothSides.filter((side) =>
		what === 'insert'
			? plan.insert[side].state === 'proposed' ||
				(plan.insertKept !== undefined && visit.insertWorn?.[side] !== undefined)
			: plan.raise.pairs.some((pair) => pair[side].addMm > 0),
	)
const worn: Part = (from) =>
	(['insert', 'raise'] as const).flatMap((what) => {
		const side = sideOf(wornSides(from, what))
		if (!side) return []
		return [
			{
				id: `worn.${what}`,
				why: state('recheck.why-worn', { what, side }),
				opens: { worn: [{ what, side }] },
			},
		]
	})
const wearingIn: Part = (from) =>
	worn(from).length + bought(from).length === 0
		? []
		: [
				{
					id: 'wearing-in',
					why: state('recheck.why-wearing-in'),
					opens: { asksWearingIn: true },
				},
			]
const season: Part = ({ visit }) =>
	visit.season
		? [{ id: 'season', why: state('recheck.why-season'), opens: { asksSeason: true } }]
		: []
/** One whose status was never said counts as now: nobody knows that it is past. */
const conditions: Part = ({ visit }) =>
	(visit.conditions ?? []).flatMap(({ condition, side, status = 'current' }, place) =>
		status === 'past'
			? []
			: [
					{
						id: `condition.${place}`,
						why: state('recheck.why-condition', { condition, side, status }),
						opens: {},
					},
				],
	)
type Measure = NonNullable<Since['measure']>[number]
function toMeasure({ visit, assessment, on, protocol }: From): Measure[] {
	const grows = !isAdultOn(visit.player.birthDate, on, protocol)
	const isSwollen = assessment.findings.some(({ code }) => code === 'sizing.not-for-buying')
	const growing = (['feet', 'body'] as const).map((what): Measure => ({ what, why: 'growing' }))
	if (grows) return growing
	return isSwollen ? [{ what: 'feet', why: 'swollen' }] : []
}
const measure: Part = (from) =>
	toMeasure(from).map((row) => ({
		id: `measure.${row.what}`,
		why: state('recheck.why-measure', row),
		opens: { measure: [row] },
	}))
/** In the order in which it is asked. */
const parts: readonly Part[] = [
	warning,
	holds,
	letter,
	done,
	bought,
	worn,
	wearingIn,
	season,
	conditions,
	measure,
]
/**
 * @param last the last signed visit, @param on the day of the re-check (ISO date)
 * @returns what is asked, each with why; never empty, since warning questions are always asked
 */
export function askedSince(last: LastVisit, on: string, protocol: Protocol): Asked[] {
	const from = { ...last, on, protocol, plan: settledPlan(last.assessment, last.decisions) }
	return parts.flatMap((part) => part(from))
}
