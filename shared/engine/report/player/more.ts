/** What else was found and has no section of its own, told where it belongs. */
import type { Gate, Holdable } from '../../findings/assessment.ts'
import { isGrave } from '../../findings/finding.ts'
import type { Decisions } from '../../visit/decisions.ts'
import type { StandingLine } from '../decided.ts'
import type { ReportInput } from '../inputs.ts'
import { type Notes, withMarks } from '../notes.ts'
import { dangerSaid } from '../page-one/danger.ts'
import { planOf } from '../plan-of.ts'
import { isRaised } from '../raise-lines.ts'
import { linesFor, readerOf } from '../reader.ts'
import { waits } from '../waits.ts'
import { reasonsForPairs } from './pair-reasons.ts'
import { pairsToFind } from './pairs-alike.ts'

/** Topics that have sections of their own. */
const toldAbove = new Set(['sizing', 'growth', 'footwear'])
/** What the plan says in a section of its own, by code. */
const saidByPlan: ReadonlySet<string | undefined> = new Set([
	'ankle.heel-raise',
	'insert.proposal',
	'insert.stopped',
	'raise.range',
	'raise.pain',
	'raise.leg-length',
	'raise.pair',
	'gate.hold',
	'screening.foot-at-risk',
])
/** What a line is about by the start of its code: it is left out while that waits. */
const about: readonly (readonly [start: string, what: Holdable])[] = [
	['ankle.heel-raise', 'raise'],
	['ankle.raise', 'raise'],
	['raise.', 'raise'],
	['insert.', 'insert'],
	['loading.', 'sport'],
	['season.', 'season'],
	['asked.exercise', 'exercise'],
]
/** Topics that are told while sport is held: the other ones serve it. */
const toldOnHold = new Set(['screening', 'measure', 'conditions'])
function isHeldBack({ finding, topic }: StandingLine, gate: Gate): boolean {
	if (finding === undefined) return false
	if (waits(gate, 'sport') && !toldOnHold.has(topic)) return true
	const { code = finding.id, side } = finding
	const limb = side === 'left' || side === 'right' ? side : undefined
	return about.some(([start, what]) => code.startsWith(start) && waits(gate, what, limb))
}
/**
 * Safety words always stand; the rest only where it matters or the clinician chose to say it. The
 * clinician's own lines always stand.
 */
function isTold({ finding, topic, level, id }: StandingLine, decisions: Decisions): boolean {
	if (finding === undefined) return true
	if (toldAbove.has(topic) || saidByPlan.has(finding.code)) return false
	if (topic === 'screening') return level !== 'stop'
	const chosen = decisions.lines.some((line) => line.findingId === id)
	return isGrave({ level }) || chosen
}
/** Lines that are told beside the raise, where there is one. */
const ofRaise = ({ finding }: StandingLine): boolean =>
	/^(?:ankle\.)?raise\b/.test(finding?.code ?? '')
const isRaiseTold = (input: ReportInput): boolean => {
	const plan = planOf(input)
	return isRaised(plan) && !waits(plan.gate, 'raise')
}
/**
 * What stands after the decisions, has no section of its own and was not said above.
 * @param place under what it is told
 */
export function moreItems(place: 'found' | 'raise', input: ReportInput, notes: Notes): string[] {
	const reader = readerOf('player', input)
	const plan = planOf(input)
	const said = new Set([
		...reasonsForPairs(reader, input, pairsToFind(plan)).map(({ id }) => id),
		...dangerSaid(reader, input),
	])
	const placeOf = (line: StandingLine) => (isRaiseTold(input) && ofRaise(line) ? 'raise' : 'found')
	return linesFor(reader, input)
		.filter(
			(line) =>
				isTold(line, input.decisions) &&
				!isHeldBack(line, plan.gate) &&
				!said.has(line.id) &&
				placeOf(line) === place,
		)
		.map(({ says, finding }) => withMarks(says, finding ? notes.mark(finding.basis) : ''))
}
