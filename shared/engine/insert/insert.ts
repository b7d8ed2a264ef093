/**
 * The insert room: from findings to elements, each foot on its own; conflicts enforced,
 * contraindications stop.
 */
import type {
	InsertConflict,
	InsertElement,
	InsertResult,
	InsertSide,
} from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, otherSide, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { practiceBasis } from './basis.ts'
import { type InsertContext, insertFacts } from './facts.ts'
import { type InsertProposal, proposalFor } from './proposal.ts'
import { evened, heldBack } from './raises.ts'
import { stopsOf } from './stops.ts'
import { veryMobile, wearInPlan } from './wear-in.ts'

/** What the clinician recorded as done, by limb: ids of stops that no longer hold. */
export type Released = Readonly<Record<Side, readonly string[]>>
const nothingReleased: Released = { left: [], right: [] }

/**
 * The proposal for both feet.
 * @param context results of the rooms it draws on, and the room in the boot where known
 * @param released stops about which the clinician has recorded what was done
 */
export function insert(
	visit: Visit,
	context: InsertContext,
	protocol: Protocol,
	released: Released = nothingReleased,
): InsertResult {
	const facts = perSide((side) => insertFacts(visit, context, side, protocol))
	const proposals = perSide((side) => proposalFor(visit, facts[side], context))
	const elements = evened(perSide((side) => proposals[side].elements))
	const own = perSide((side) => {
		const { adult } = facts[side]
		const stoppedBy = stopsOf(visit, context.screening, side, adult, released[side])
		return insertSide(elements[side], stoppedBy)
	})
	const settled = perSide((side) =>
		own[otherSide(side)].state === 'stopped' ? heldBack(own[side], side) : { insert: own[side] },
	)
	const inserts = perSide((side) => settled[side].insert)
	const conflicts = [
		...bothSides.flatMap((side) =>
			own[side].state === 'stopped' ? [] : proposals[side].conflicts,
		),
		...bothSides.flatMap((side) => settled[side].conflict ?? []),
	]
	const proposed = bothSides.some((side) => inserts[side].state === 'proposed')
	const gentle = facts.left.nowAnywhere(...veryMobile)
	return {
		...inserts,
		conflicts,
		wearIn: proposed ? wearInPlan(gentle, protocol) : [],
		findings: [
			...bothSides.flatMap((side) =>
				sideFindings(inserts[side], side, elements[side], proposals[side]),
			),
			...conflicts.map(conflictFinding),
		],
	}
}
function insertSide(elements: InsertElement[], stoppedBy: InsertSide['stoppedBy']): InsertSide {
	if (stoppedBy.length > 0) return { state: 'stopped', stoppedBy, elements: [] }
	if (elements.length === 0) return { state: 'not-needed', stoppedBy: [], elements: [] }
	return { state: 'proposed', stoppedBy: [], elements }
}
/** @param wished what would be proposed if nothing stopped it: a stop is told only then */
function sideFindings(
	{ state: made, stoppedBy, elements }: InsertSide,
	side: Side,
	wished: readonly InsertElement[],
	{ because }: InsertProposal,
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
	return [
		findingOf(state('insert.stopped', { side, stops: stoppedBy.map(({ id }) => id) }), {
			side,
			level: 'stop',
			because: stoppedBy.map(({ id }) => ({ measure: 'warningSign', value: signOf(id) })),
			basis: {
				rule: 'contraindications of an insert',
				source: 'expert opinion and common practice',
				strength: 'expert',
			},
		}),
	]
}
/** The sign that an id of the screening or of a stop names. */
const signOf = (id: string): string => (id.split('.')[1] ?? id).replace(/^stop-/, '')
const sized = ({ element, choice, value, unit }: InsertElement) =>
	present({ element, choice, value, unit })
const conflictFinding = ({
	id,
	side,
	elements,
	code = id,
	params = {},
	says,
	basis,
}: InsertConflict): Finding =>
	findingOf(
		{ code, params, says },
		{
			id,
			side,
			level: 'caution',
			because: elements.map((element) => ({ measure: 'element', value: element })),
			basis,
		},
	)
