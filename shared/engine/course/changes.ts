/** What was changed at each signed visit: asked for there, or told there. Described, never judged. */
import { isHeld } from '../facts/held.ts'
import { canonicalJson } from '../plain/canonical.ts'
import { type SettledPlan, settledPlan } from '../prescription/settled.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { LastVisit } from '../recheck/asked.ts'
import { insertAfter, isInsertLeftOff } from '../recheck/insert-worn.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import type { LoadParams } from '../words/en/question-lines.ts'
import { type Statement, state } from '../words/statement.ts'

/** What stood after the visit before. */
interface Standing {
	raise?: { leftMm: number; rightMm: number }
	load?: LoadParams
	insert: boolean
}
/** A visit as its plan was settled; a plan that was declined changes nothing. */
interface At extends LastVisit {
	plan: SettledPlan
	isDeclined: boolean
	protocol: Protocol
}
interface Told {
	changes: Statement[]
	after: Partial<Standing>
}
type Part = (at: At, before: Standing) => Told

/** The highest on each side, over all pairs. */
function raiseOf({ raise: { pairs } }: SettledPlan): Standing['raise'] {
	const leftMm = Math.max(0, ...pairs.map(({ left }) => left.addMm))
	const rightMm = Math.max(0, ...pairs.map(({ right }) => right.addMm))
	return leftMm + rightMm > 0 ? { leftMm, rightMm } : undefined
}
const raise: Part = ({ visit, plan, isDeclined }, { raise: before }) => {
	const now = visit.since?.worn?.find(({ what }) => what === 'raise')?.now
	const isOff = before !== undefined && now !== undefined && now !== 'still-worn'
	const ended = isOff ? [state('course.raise-ended', { how: now })] : []
	const standing = isOff ? undefined : before
	if (isDeclined || isHeld(plan.gate, 'raise'))
		return { changes: ended, after: { ...(standing && { raise: standing }) } }
	const asked = raiseOf(plan)
	const after = { ...(asked && { raise: asked }) }
	if (!asked)
		return {
			changes: standing ? [state('course.raise-ended', { how: 'no-longer-asked' })] : ended,
			after,
		}
	if (standing === undefined)
		return { changes: [...ended, state('course.raise-begun', asked)], after }
	const isSame = canonicalJson(asked) === canonicalJson(standing)
	return { changes: isSame ? [] : [state('course.raise-changed', asked)], after }
}
const insert: Part = (at, { insert: before }) => {
	const { visit, protocol } = at
	const now = insertAfter(at, protocol)
	const last = now?.adjusted?.at(-1)
	return {
		changes: [
			...(isInsertLeftOff(visit) && (before || visit.insertWorn)
				? [state('course.insert-left-off')]
				: []),
			...(now?.orderedOn === visit.visitDate ? [state('course.insert-ordered')] : []),
			...(last?.on === visit.visitDate
				? [state('course.insert-adjusted', { lines: last.lines })]
				: []),
		],
		after: { insert: now !== undefined },
	}
}
const pairs: Part = ({ visit, plan }) => {
	const names = new Map((visit.footwear ?? []).map(({ id, name = id }) => [id, name]))
	const left = plan.owned
		.filter(({ verdict }) => verdict === 'stop-wearing')
		.map(({ id }) => names.get(id) ?? id)
	return {
		changes: [
			...(visit.since?.bought ?? [])
				.filter(({ answer }) => answer === 'bought')
				.map(({ role }) => state('course.pair-bought', { role })),
			...(left.length > 0 ? [state('course.pair-left-off', { pairs: left })] : []),
		],
		after: {},
	}
}
function loadOf({ load }: SettledPlan): LoadParams | undefined {
	const { exercises: _, own, ...proposed } = load ?? { exercises: [] }
	const { steps: __, ...set } = own ?? {}
	const now = (own ? set : proposed) as LoadParams
	return Object.keys(now).length > 0 ? now : undefined
}
const load: Part = ({ plan, isDeclined }, { load: before }) => {
	const now = isDeclined ? undefined : loadOf(plan)
	const isNew = now !== undefined && canonicalJson(now) !== canonicalJson(before ?? null)
	return {
		changes: isNew ? [state('course.load', { load: now })] : [],
		after: { ...(now && { load: now }) },
	}
}
const parts: readonly Part[] = [raise, insert, pairs, load]
/** @param visits oldest first; @returns a list a visit, empty where nothing was changed */
export function changesOver(visits: readonly LastVisit[], protocol: Protocol): Statement[][] {
	let before: Standing = { insert: false }
	return visits.map((visit) => {
		const at: At = {
			...visit,
			plan: settledPlan(visit.assessment, visit.decisions),
			isDeclined: isPlanDeclined(visit.decisions),
			protocol,
		}
		const told = parts.map((part) => part(at, before))
		before = Object.assign({ insert: false }, ...told.map(({ after }) => after)) as Standing
		return told.flatMap(({ changes }) => changes)
	})
}
