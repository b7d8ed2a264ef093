/**
 * The insert room: from findings to elements, each foot on its own. What it proposes fits together
 * and into the boot; what gave way is told; what the gate holds is not proposed.
 */

import { hasCondition } from '../conditions/query.ts'
import { holdsOn } from '../facts/held.ts'
import type {
	InsertConflict,
	InsertElement,
	InsertResult,
	InsertSide,
	PerSide,
} from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, otherSide, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { type InsertContext, insertFacts } from './facts.ts'
import { endsOf, heldBy, signsOf } from './held.ts'
import { type InsertProposal, proposalFor } from './proposal.ts'
import { isRaise, thicknessMm } from './room-in-boot.ts'
import { underHeel } from './settle.table.ts'
import { veryMobile, wearInPlan } from './wear-in.ts'
import { wornFindings } from './worn.ts'

function proposedFor(visit: Visit, context: InsertContext, protocol: Protocol) {
	const proposals = perSide((side) =>
		proposalFor(visit, insertFacts(visit, context, side, protocol), context),
	)
	const inserts = perSide((side) =>
		insertSide(proposals[side].elements, heldBy(context.gate, side)),
	)
	return { proposals, inserts }
}
/** The elements of both feet alone, for what only reckons with them. @param context as `insert` */
export const insertElements = (
	visit: Visit,
	context: InsertContext,
	protocol: Protocol,
): PerSide<InsertSide> => proposedFor(visit, context, protocol).inserts
/**
 * The proposal for both feet.
 * @param context gate, raise and posture of the visit, and the room in the boot where known
 */
export function insert(visit: Visit, context: InsertContext, protocol: Protocol): InsertResult {
	const { proposals, inserts } = proposedFor(visit, context, protocol)
	const settled = bothSides.flatMap((side) =>
		inserts[side].state === 'held' ? [] : proposals[side].settled,
	)
	const proposed = bothSides.some((side) => inserts[side].state === 'proposed')
	const gentle = hasCondition(visit, veryMobile)
	return {
		...inserts,
		conflicts: [],
		settled,
		wearIn: proposed ? wearInPlan(gentle, protocol) : [],
		findings: [
			...bothSides.flatMap((side) => sideFindings(inserts[side], side, proposals[side], context)),
			...bothSides.flatMap((side) => oneSided(inserts, side, protocol)),
			...settled.map(settledFinding),
			...wornFindings(visit, inserts),
		],
	}
}
function insertSide(elements: InsertElement[], stoppedBy: InsertSide['stoppedBy']): InsertSide {
	if (stoppedBy.length > 0) return { state: 'held', stoppedBy, elements: [] }
	if (elements.length === 0) return { state: 'not-needed', stoppedBy: [], elements: [] }
	return { state: 'proposed', stoppedBy: [], elements }
}
/** A hold is told only where an insert is called for. */
function sideFindings(
	{ state: made, elements }: InsertSide,
	side: Side,
	{ because, elements: wished }: InsertProposal,
	{ gate }: InsertContext,
): Finding[] {
	if (made === 'proposed')
		return [
			findingOf(state('insert.proposal', { side, elements: elements.map(sized) }), {
				side,
				level: 'advise',
				because,
				basis: practiceBasis('from finding to element: each element has its own basis'),
			}),
		]
	if (made === 'not-needed' || wished.length === 0) return []
	const holds = holdsOn(gate, 'insert', side)
	return [
		findingOf(state('insert.held', { side, until: endsOf(holds) }), {
			side,
			level: 'note',
			because: signsOf(holds).map((value) => ({ measure: 'warningSign', side, value })),
			basis: {
				rule: 'contraindications of an insert',
				source: 'expert opinion and common practice',
				strength: 'expert',
			},
		}),
	]
}
/** It lifts one heel alone: the other is laid level, or the heels are looked at together. */
function oneSided(inserts: PerSide<InsertSide>, side: Side, protocol: Protocol): Finding[] {
	const other = otherSide(side)
	const { state: made, elements } = inserts[side]
	if (made !== 'proposed' || inserts[other].state === 'proposed') return []
	const own = elements.filter((element) => !isRaise(element))
	const mm = Math.max(thicknessMm(own, underHeel), thicknessMm(own, underHeel, 'trainer'))
	if (mm < protocol.value('raise.leastMm')) return []
	const waits = inserts[other].state === 'held'
	return [
		findingOf(state('insert.one-sided', { side, other, mm: rounded(mm, 1), waits }), {
			side,
			level: 'advise',
			because: own
				.filter(({ element }) => (underHeel as readonly string[]).includes(element))
				.map(({ element }) => ({ measure: 'element', value: element })),
			basis: practiceBasis('heels that stand level'),
		}),
	]
}
const sized = ({ element, choice, value, unit }: InsertElement) =>
	present({ element, choice, value, unit })
/** Told, and nothing to decide: it is settled. */
const settledFinding = ({
	id,
	side,
	elements,
	code,
	params,
	says,
	basis,
}: InsertConflict): Finding =>
	findingOf(
		{ code, params, says },
		{
			id,
			side,
			level: 'note',
			because: elements.map((element) => ({ measure: 'element', value: element })),
			basis,
		},
	)
