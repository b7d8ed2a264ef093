/**
 * Raises under the heel: what is for both shoes is equal in both, and all of a foot together stay
 * within what a boot holds.
 */
import type { InsertConflict, InsertElement, InsertSide } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { otherSide, rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'

/** For both shoes, or for the shorter leg. */
export const isRaise = ({ element }: InsertElement): boolean =>
	element === 'heel-raise' || element === 'leg-length-raise'
const carriers: readonly string[] = ['device', 'shell', 'heel-cup', 'cover', 'length']
/** Nothing is left to carry. */
const onlyCarriers = (elements: readonly InsertElement[]): boolean =>
	elements.every(({ element }) => carriers.includes(element))
const heelRaiseIn = (elements: readonly InsertElement[]): InsertElement | undefined =>
	elements.find(({ element }) => element === 'heel-raise')
const withoutHeelRaise = (elements: readonly InsertElement[]): InsertElement[] =>
	elements.filter(({ element }) => element !== 'heel-raise')

/**
 * The raise for both shoes is equal on both sides, so that a leg-length raise is not undone: the
 * lower one stands. Without a leg-length raise each side keeps its own.
 */
export function evened(
	elements: Readonly<Record<Side, InsertElement[]>>,
): Record<Side, InsertElement[]> {
	const { left, right } = elements
	const raised = heelRaiseIn(left) !== undefined || heelRaiseIn(right) !== undefined
	const unequalLegs = [...left, ...right].some(({ element }) => element === 'leg-length-raise')
	if (!raised || !unequalLegs) return { left, right }
	const lowerMm = Math.min(heelRaiseIn(left)?.value ?? 0, heelRaiseIn(right)?.value ?? 0)
	return { left: raisedBy(lowerMm, left), right: raisedBy(lowerMm, right) }
}
function raisedBy(lowerMm: number, elements: readonly InsertElement[]): InsertElement[] {
	if (lowerMm === 0) {
		const rest = withoutHeelRaise(elements)
		return onlyCarriers(rest) ? [] : rest
	}
	return elements.map((element) =>
		element.element === 'heel-raise' && element.value !== lowerMm
			? { ...element, value: lowerMm, ...state('insert.heel-raise', { evened: true }) }
			: element,
	)
}
/** A raise for both shoes is not given to one foot alone while the other waits. */
export function heldBack(
	insert: InsertSide,
	side: Side,
): { insert: InsertSide; conflict?: InsertConflict } {
	if (!heelRaiseIn(insert.elements)) return { insert }
	const elements = withoutHeelRaise(insert.elements)
	return {
		insert: onlyCarriers(elements)
			? { ...insert, state: 'not-needed', elements: [] }
			: { ...insert, elements },
		conflict: conflictOn(
			side,
			state('insert.raise-waits', { side, otherSide: otherSide(side) }),
			['heel-raise'],
			practiceBasis('heel raise to both shoes'),
		),
	}
}
/**
 * All raises of a foot together stay within the boot's limit; the raise for both shoes gives way
 * first. One cut to nothing is left out.
 */
export function limited(
	elements: InsertElement[],
	side: Side,
	protocol: Protocol,
): { elements: InsertElement[]; conflicts: InsertConflict[] } {
	const limitMm = protocol.value('insert.raiseMaxMm')
	const totalMm = elements.filter(isRaise).reduce((sumMm, { value }) => sumMm + (value ?? 0), 0)
	if (totalMm <= limitMm) return { elements, conflicts: [] }
	const overMm = totalMm - limitMm
	const fromHeelRaiseMm = Math.min(overMm, heelRaiseIn(elements)?.value ?? 0)
	const cutMm = (element: InsertElement, valueMm: number) =>
		element.element === 'heel-raise' ? fromHeelRaiseMm : Math.min(overMm - fromHeelRaiseMm, valueMm)
	const kept = elements.flatMap((element) => {
		const { value: valueMm } = element
		if (!isRaise(element) || valueMm === undefined) return [element]
		const leftMm = valueMm - cutMm(element, valueMm)
		return leftMm === 0 ? [] : [{ ...element, value: leftMm }]
	})
	return {
		elements: kept,
		conflicts: [
			conflictOn(
				side,
				state('insert.raise-total', { side, totalMm: rounded(totalMm, 1), limitMm }),
				kept.filter(isRaise).map(({ element }) => element),
				protocol.basis('all raises in a boot', 'insert.raiseMaxMm'),
			),
		],
	}
}
