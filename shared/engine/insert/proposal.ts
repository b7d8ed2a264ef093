/** What the findings of one foot call for, as it fits: nothing in it works against something else. */
import { isHeld } from '../facts/held.ts'
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Visit } from '../visit/visit.ts'
import { elementName } from '../words/en/insert-names.ts'
import { state } from '../words/statement.ts'
import { elementOf } from './amounts.ts'
import { baseOf } from './base.ts'
import { conflictOn } from './conflict.ts'
import { callsFor, objectionsTo, withoutRepeats } from './elements/called.ts'
import { elementRows } from './elements/elements.ts'
import type { ElementRow } from './elements/row.ts'
import type { InsertContext, InsertFacts } from './facts.ts'
import { raiseElements, wantedInBoots } from './raised.ts'
import { asTheBootHolds } from './room-in-boot.ts'
import { cautionOf } from './said.ts'
import { carriers } from './settle.table.ts'
import { withoutOpposites } from './settle.ts'

export interface InsertProposal {
	/** Empty where nothing is called for. */
	elements: InsertElement[]
	/** What was called for and gave way, and why. */
	settled: InsertConflict[]
	because: Because[]
}
/** Nothing is left to carry. */
const onlyCarriers = (elements: readonly InsertElement[]): boolean =>
	elements.every(({ element }) => (carriers as readonly string[]).includes(element))

/** The raises that may stand: one for both shoes not while the insert of either foot is held. */
function raisesFor(visit: Visit, facts: InsertFacts, { gate, raised }: InsertContext) {
	if (!raised || isHeld(gate, 'raise')) return []
	const raises = raiseElements(visit, raised, facts)
	return isHeld(gate, 'insert') ? raises.filter(({ element }) => element !== 'heel-raise') : raises
}
/**
 * The elements called for and what carries them, settled among themselves and with the boot. A raise
 * alone calls for no insert: it is a wedge.
 */
export function proposalFor(
	visit: Visit,
	facts: InsertFacts,
	context: InsertContext,
): InsertProposal {
	const { protocol, side } = facts
	const rows = elementRows.map((row) => calledBy(row, facts, isHeld(context.gate, 'insert')))
	const withheld = rows.flatMap((row) => row.withheld)
	const found = rows.flatMap(({ element }) => element ?? [])
	const { elements: called, settled: opposed } = withoutOpposites(found, facts)
	const because = withoutRepeats(called.flatMap((element) => element.because))
	const before = [...withheld, ...opposed]
	if (called.length === 0) return { elements: [], settled: before, because }
	const shelled = rows.some(
		({ element, needsShell }) => element !== undefined && needsShell && called.includes(element),
	)
	const base = baseOf(called, shelled, because, facts)
	const held = asTheBootHolds(
		[...base.elements, ...called],
		context.room,
		wantedInBoots(visit, context.wanted, side),
		side,
		protocol,
	)
	const elements = [...held.elements, ...raisesFor(visit, facts, context)]
	return {
		elements: onlyCarriers(elements) ? [] : elements,
		settled: [...before, ...base.settled, ...held.settled],
		because,
	}
}
/** Calls without those for both shoes. */
const ofThisFoot = ({ calls }: ElementRow) =>
	calls.filter((needs) => !needs.some(({ eitherSide }) => eitherSide === true))
interface Called {
	/** Undefined where no finding calls for it, or something speaks hard against it. */
	element?: InsertElement
	needsShell: boolean
	withheld: InsertConflict[]
}
/** @param oneWaits nothing goes under one of the feet: what is for both shoes goes under neither */
function calledBy(row: ElementRow, facts: InsertFacts, oneWaits: boolean): Called {
	const { side, protocol } = facts
	const { needsShell, element, key } = row
	const because = callsFor(oneWaits ? { ...row, calls: ofThisFoot(row) } : row, facts)
	if (because.length === 0) return { needsShell, withheld: [] }
	const { leaveOut, caution } = objectionsTo(row, facts)
	if (leaveOut.length === 0) {
		const cautions = [
			...caution.map((objection) => state('insert.objection', objection)),
			...row.cautions.map((always) => cautionOf(always, protocol)),
		]
		return { element: elementOf(row, facts, because, cautions), needsShell, withheld: [] }
	}
	return {
		needsShell,
		withheld: [
			conflictOn(
				side,
				state('insert.withheld', { side, element, against: leaveOut }),
				[element],
				protocol.basis(elementName(element), key),
				element,
			),
		],
	}
}
