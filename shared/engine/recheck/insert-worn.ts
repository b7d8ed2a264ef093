/**
 * The insert that a player has after a signed visit: the one ordered there, or the one of before with
 * what was adjusted. A later visit begins with it, so that a second adjustment knows the first.
 */
import { decidedInsert } from '../insert/decided.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import { settledPlan } from '../prescription/settled.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { isPlanDeclined } from '../visit/agreement.ts'
import type { Adjustment, InsertWorn } from '../visit/recorded/insert-worn.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { LastVisit } from './asked.ts'

type Element = NonNullable<NonNullable<InsertWorn['left']>['elements']>[number]
const mostAdjusted = 20
const keptText = 60

const amountOf = ({ mm, deg }: Adjustment): { value: number; unit: string } | undefined => {
	if (mm !== undefined) return { value: mm, unit: 'mm' }
	return deg === undefined ? undefined : { value: deg, unit: 'deg' }
}
/** The amount of an element after one line; it is not worked out where the units differ. */
function adjusted(element: Element, line: Adjustment): Element {
	const by = amountOf(line)
	const { value, unit = '' } = element
	if (line.element !== element.element || by === undefined || value === undefined) return element
	if (!unit.startsWith(by.unit)) return element
	if (line.act === 'add') return { ...element, value: rounded(value + by.value, 1) }
	if (line.act !== 'take-off' && line.act !== 'grind') return element
	return { ...element, value: Math.max(0, rounded(value - by.value, 1)) }
}
function withLine(elements: readonly Element[], line: Adjustment): Element[] {
	const { element, act } = line
	if (act === 'add' && element !== undefined && !elements.some((one) => one.element === element))
		return [...elements, { element, ...amountOf(line) }]
	return elements.map((one) => adjusted(one, line))
}
/** The places told are of their day. */
function sideOf(worn: InsertWorn, side: Side, lines: readonly Adjustment[]) {
	const elements = (worn[side]?.elements ?? []).slice()
	const now = lines.filter((line) => line.side === side).reduce<Element[]>(withLine, elements)
	return now.length > 0 ? { [side]: { elements: now } } : {}
}
function carried(worn: InsertWorn, on: string, lines: readonly Adjustment[]): InsertWorn {
	const { orderedOn, adjusted: before = [] } = worn
	const done = lines.length > 0 ? [...before, { on, lines: [...lines] }] : before
	return {
		orderedOn,
		...(done.length > 0 && { adjusted: done.slice(-mostAdjusted) }),
		...sideOf(worn, 'left', lines),
		...sideOf(worn, 'right', lines),
	}
}
function ordered(last: LastVisit, plan: SettledPlan, protocol: Protocol): InsertWorn | undefined {
	const { visit, assessment, decisions } = last
	const decided = decidedInsert(visit, assessment, decisions, protocol)
	const elementsOf = (side: Side): Element[] =>
		plan.insert[side].state !== 'proposed'
			? []
			: decided[side]
					.map(({ element }) => element)
					.filter(({ element }) => plan.insert[side].elements.includes(element))
					.map(({ element, value, unit }) => ({
						element: element.slice(0, keptText),
						...(value !== undefined && { value }),
						...(unit !== undefined && { unit: unit.slice(0, keptText) }),
					}))
	const sides = bothSides.flatMap((side) => {
		const elements = elementsOf(side)
		return elements.length > 0 ? [[side, { elements }] as const] : []
	})
	return sides.length === 0
		? undefined
		: { orderedOn: visit.visitDate, ...Object.fromEntries(sides) }
}
/** Whether it was said that the insert of before is worn no more. */
export function isInsertLeftOff({ insertWorn, since }: Visit): boolean {
	const now = since?.worn?.find(({ what }) => what === 'insert')?.now
	return insertWorn?.stillWorn === false || (now !== undefined && now !== 'still-worn')
}
/** @returns undefined where the player has none of ours */
export function insertAfter(last: LastVisit, protocol: Protocol): InsertWorn | undefined {
	const { visit, assessment, decisions } = last
	const { insertWorn: before, visitDate } = visit
	const isDeclined = isPlanDeclined(decisions)
	const plan = settledPlan(assessment, decisions)
	const kept = plan.insertKept
	if (before && kept && kept.anew !== true)
		return carried(before, visitDate, isDeclined ? [] : kept.lines)
	const made = isDeclined ? undefined : ordered(last, plan, protocol)
	return made ?? (before && !isInsertLeftOff(visit) ? carried(before, visitDate, []) : undefined)
}
