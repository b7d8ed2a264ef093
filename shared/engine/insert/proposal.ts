/** What the findings of one foot call for, before stops and the other foot are looked at. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { type ElementId, elementName } from '../words/en/insert-names.ts'
import { state } from '../words/statement.ts'
import { elementOf } from './amounts.ts'
import { baseOf } from './base.ts'
import { practiceBasis } from './basis.ts'
import { conflictOn } from './conflict.ts'
import { callsFor, objectionsTo, withoutRepeats } from './elements/called.ts'
import { elementRows } from './elements/elements.ts'
import type { ElementRow } from './elements/row.ts'
import type { InsertContext, InsertFacts } from './facts.ts'
import { legLengthElement } from './leg-length.ts'
import { limited } from './raises.ts'
import { roomConflicts } from './room-in-boot.ts'
import { cautionOf } from './said.ts'

/** Two elements that work against each other: both are shown, and one is to be chosen. */
const opposites: readonly (readonly [ElementId, ElementId])[] = [
	['rearfoot-post-medial', 'rearfoot-post-lateral'],
	['medial-skive', 'lateral-skive'],
	['forefoot-post-medial', 'forefoot-post-lateral'],
	['first-ray-cutout', 'forefoot-stiffener'],
	['metatarsal-dome', 'forefoot-cushion'],
]
export interface InsertProposal {
	/** Empty where nothing is called for. */
	elements: InsertElement[]
	conflicts: InsertConflict[]
	because: Because[]
}
/** The elements called for, what carries them, and what works against what. */
export function proposalFor(
	visit: Visit,
	facts: InsertFacts,
	context: InsertContext,
): InsertProposal {
	const { protocol, side } = facts
	const rows = elementRows.map((row) => calledBy(row, facts))
	const shelled = rows.some(({ element, needsShell }) => element !== undefined && needsShell)
	const legLength = legLengthElement(visit, facts, context.ankle)
	const found = [...rows.map(({ element }) => element), legLength].filter(
		(element) => element !== undefined,
	)
	const { elements: called, conflicts: cut } = limited(found, side, protocol)
	const because = withoutRepeats(called.flatMap((element) => element.because))
	const conflicts = [
		...rows.flatMap(({ withheld }) => withheld),
		...cut,
		...exclusions(called, side),
	]
	if (called.length === 0) return { elements: [], conflicts, because }
	const base = baseOf(called, shelled, because, facts)
	const elements = [...base.elements, ...called]
	return {
		elements,
		conflicts: [
			...conflicts,
			...base.conflicts,
			...roomConflicts(elements, context.room, side, protocol),
		],
		because,
	}
}
interface Called {
	/** Undefined where no finding calls for it, or something speaks hard against it. */
	element?: InsertElement
	needsShell: boolean
	withheld: InsertConflict[]
}
function calledBy(row: ElementRow, facts: InsertFacts): Called {
	const { side, protocol } = facts
	const { needsShell, element, key } = row
	const because = callsFor(row, facts)
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
function exclusions(called: readonly InsertElement[], side: Side): InsertConflict[] {
	const has = (id: ElementId) => called.some(({ element }) => element === id)
	return opposites
		.filter((pair) => pair.every(has))
		.map(([first, second]) =>
			conflictOn(
				side,
				state('insert.choose', { side, first, second }),
				[first, second],
				practiceBasis('elements that exclude each other'),
				first,
			),
		)
}
