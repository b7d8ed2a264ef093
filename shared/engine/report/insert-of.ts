/** The insert of the plan, element by element. */
import { type DecidedInsert, decidedInsert } from '../insert/decided.ts'
import { isRaise } from '../insert/room-in-boot.ts'
import type { SettledPlan } from '../prescription/settled.ts'
import { openProtocol } from '../protocol/protocol.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { adjustmentsOf, keptInsertOf } from './adjustments-of.ts'
import type { ReportInput } from './inputs.ts'
import { planOf } from './plan-of.ts'
import { isRaised } from './raise-lines.ts'
import { waits } from './waits.ts'

/** A step of wearing in; the others are minded all the while. */
const isStep = (code = ''): boolean => code !== 'insert.wear-review' && code !== 'insert.wear-stop'
/**
 * The elements that stand in the plan of a document, by the protocol of the assessment; none on a
 * limb whose insert is held, none on either while sport is, and no raise that the plan does not have.
 */
export function insertOf(
	input: Pick<ReportInput, 'visit' | 'assessment' | 'decisions' | 'protocol' | 'draft'>,
): DecidedInsert {
	const { visit, assessment, decisions, protocol = openProtocol() } = input
	const plan = planOf(input)
	const { gate, insert } = plan
	const isRaiseOut = waits(gate, 'raise') || (assessment.prescription && !isRaised(plan))
	const decided = decidedInsert(visit, assessment, decisions, protocol)
	const worn = keptInsertOf(input) ? visit.insertWorn : undefined
	// one that goes on being worn has what it has, whatever is found today
	const isInIt = (side: Side, name: string) =>
		worn?.[side]?.elements?.some(({ element }) => element === name) ?? worn === undefined
	const standing = perSide((side) => {
		const { state, elements } = insert[side]
		if (state !== 'proposed' || waits(gate, 'insert', side)) return []
		return decided[side]
			.filter(({ element }) => elements.includes(element.element))
			.filter(({ element }) => isInIt(side, element.element))
			.filter(
				({ element, decision }) => !(isRaiseOut && isRaise(element)) || decision?.choice === 'add',
			)
	})
	const { wearIn } = decided.result
	// what was not changed was worn in before
	const isWornIn = worn !== undefined && adjustmentsOf(input) === undefined
	const left = isWornIn ? wearIn.filter(({ code }) => !isStep(code)) : wearIn
	return { ...decided, result: { ...decided.result, wearIn: left }, ...standing }
}
/** Whether the plan has something worn inside a shoe, insert or raise, that nothing holds. */
export const insertWorn = (plan: Pick<SettledPlan, 'gate' | 'insert' | 'raise'>): boolean =>
	(isRaised(plan) && !waits(plan.gate, 'raise')) ||
	bothSides.some(
		(side) => plan.insert[side].state === 'proposed' && !waits(plan.gate, 'insert', side),
	)
