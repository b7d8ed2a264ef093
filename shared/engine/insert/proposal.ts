/** What the findings of one foot call for, before stops and the other foot are looked at. */
import type { InsertConflict, InsertElement } from '../findings/assessment.ts'
import type { Because } from '../protocol/basis.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { elementOf } from './amounts.ts'
import { baseOf } from './base.ts'
import { capitalised, conflictOn } from './conflict.ts'
import { type ElementId, elementWords, practiceBasis } from './element-words.ts'
import { elementRows } from './elements/elements.ts'
import { type ElementRow, speaksAgainst } from './elements/row.ts'
import type { InsertContext, InsertFacts } from './facts.ts'
import { legLengthElement } from './leg-length.ts'
import { limited } from './raises.ts'
import { roomConflicts } from './room-in-boot.ts'

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
	const needsShell = row.device
	const because = row.when(facts)
	if (because.length === 0) return { needsShell, withheld: [] }
	const against = speaksAgainst(row, facts)
	const hard = against.filter((objection) => objection.hard)
	const words = elementWords[row.element]
	if (hard.length === 0) {
		const objections = against.map(({ says }) => `${capitalised(says)}.`)
		return {
			element: elementOf(row, facts, because, [...objections, ...row.cautions]),
			needsShell,
			withheld: [],
		}
	}
	return {
		needsShell,
		withheld: [
			conflictOn(
				side,
				`withheld-${row.element}`,
				[row.element],
				`${capitalised(words)} is left out on the ${side}: ` +
					`${hard.map(({ says }) => says).join('; ')}.`,
				protocol.basis(words, row.key),
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
				`choose-${first}`,
				[first, second],
				`${capitalised(elementWords[first])} and ${elementWords[second]} on the ${side} work ` +
					'against each other or do the same: choose one.',
				practiceBasis('elements that exclude each other'),
			),
		)
}
const withoutRepeats = (reasons: readonly Because[]): Because[] =>
	reasons.filter(
		({ measure, value }, index) =>
			reasons.findIndex((other) => other.measure === measure && other.value === value) === index,
	)
