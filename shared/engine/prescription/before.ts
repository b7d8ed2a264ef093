/**
 * The plan of a record of before 0.4, which has no prescription: what its rooms proposed and the
 * clinician decided line by line.
 */
import { openGate } from '../facts/held.ts'
import type {
	Gate,
	Hold,
	Kept,
	KeptAssessment,
	OwnedPair,
	PerSide,
	RaisePlan,
	RolePair,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import { standingWishes } from '../report/decided.ts'
import { markedLines, markedWork, workKey } from '../report/marked.ts'
import type { Decisions } from '../visit/decisions.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { SettledPlan } from './settled.ts'

const verdictNow = {
	keep: 'keep',
	change: 'modify',
	replace: 'replace',
} as const
/** A pair of which nothing could be said is left out. */
const ownedBefore = ({ footwear }: KeptAssessment): Kept<OwnedPair>[] =>
	footwear.current.flatMap(({ id, verdict, replaceBy, says, code, params }) =>
		verdict === 'unknown'
			? []
			: [
					present({
						id,
						verdict: verdictNow[verdict],
						by: replaceBy,
						because: [],
						work: [],
						says,
						code,
						params,
					}),
				],
	)
/** What was to be looked for in a boot; a line left out is gone. */
function pairBefore(
	{ footwear, sizing, ankle }: KeptAssessment,
	decisions: Decisions,
): Kept<RolePair>[] {
	const wished = (kind: 'seek' | 'avoid') =>
		standingWishes(footwear.target[kind], kind, decisions).map(({ feature }) => feature)
	const seek = wished('seek')
	const avoid = wished('avoid')
	const shelf = markedLines(decisions, 'model').map(({ findingId }) =>
		findingId.slice('model.'.length),
	)
	const { insideLengthMm } = sizing
	if (seek.length + avoid.length + shelf.length === 0 && !insideLengthMm) return []
	return [
		present({
			id: 'match',
			role: 'match' as const,
			surfaces: [],
			insideLengthMm,
			offsetMm: ankle.offsetMm,
			seek,
			avoid,
			settled: [],
			shelf,
			means: shelf.length > 0 ? ('buy' as const) : ('with-what-you-have' as const),
		}),
	]
}
/** The raise that was decided; what was only proposed stands until it is. */
function raiseBefore({ ankle }: KeptAssessment, { heelRaiseMm }: Decisions): Kept<RaisePlan> {
	const mm: PerSide<number> | undefined = heelRaiseMm ?? ankle.heelRaiseMm
	if (!mm || (mm.left === 0 && mm.right === 0))
		return { aim: { kind: 'none', because: [] }, pairs: [], steps: [] }
	const foot = (side: Side) =>
		({
			addMm: mm[side],
			madeBy: mm[side] > 0 ? 'wedge' : 'none',
			addedUnderHeelMm: mm[side],
		}) as const
	return {
		aim: { kind: 'range', mm, because: [] },
		pairs: [{ pair: 'role.match', offsetFrom: 'unknown', ...perSide(foot), limits: [] }],
		steps: [],
	}
}
const insertBefore = (
	{ insert }: KeptAssessment,
	decisions: Decisions,
	side: Side,
): SettledPlan['insert']['left'] => {
	const { state, elements } = insert[side]
	if (state === 'stopped' || state === 'held') return { state: 'held', elements: [], pairs: [] }
	const decided = decisions.insert?.[side] ?? []
	const has = (element: string, choice: string) =>
		decided.some((one) => one.element === element && one.choice === choice)
	const standing = [
		...elements.map(({ element }) => element).filter((element) => !has(element, 'drop')),
		...decided.filter(({ choice }) => choice === 'add').map(({ element }) => element),
	]
	return {
		state: standing.length > 0 ? 'proposed' : 'not-needed',
		elements: [...new Set(standing)],
		pairs: [],
	}
}
/** Limbs for which it was not recorded what was done about every sign that stopped them. */
export const waitingLimbs = (
	{ screening }: KeptAssessment,
	{ screeningDone = [] }: Decisions,
): Side[] =>
	bothSides.filter((side) => {
		const done = screeningDone.filter((one) => one.side === side).flatMap(({ items }) => items)
		return screening.blockedBy[side].some((id) => !done.includes(id))
	})
/** A limb that waited for a record of what was done held back its insert and the rotation. */
function gateBefore(assessment: KeptAssessment, decisions: Decisions): Gate {
	const { screening, visitDate } = assessment
	const waiting = waitingLimbs(assessment, decisions)
	const hold = (what: Hold['what']): Hold => ({
		what,
		rule: 'screening.blocked',
		until: 'outcome',
		since: visitDate,
	})
	const limb = (side: Side) =>
		waiting.includes(side)
			? {
					...openGate[side],
					state: 'held' as const,
					action: screening.action,
					holds: [hold('insert')],
					because: [...screening.blockedBy[side]],
				}
			: openGate[side]
	return {
		person: {
			...openGate.person,
			action: screening.action,
			...(waiting.length > 0 && { state: 'held' as const, holds: [hold('season')] }),
		},
		...perSide(limb),
	}
}
/** Changes and lacings that the clinician marked to be done. */
function workBefore(
	work: KeptAssessment['footwear']['lacing'] = [],
	decisions: Decisions,
): string[] {
	const marked = markedLines(decisions, 'work').flatMap((line) => markedWork(line) ?? [])
	const keys = new Set(marked.map(workKey))
	return work.map(workKey).filter((key) => keys.has(key))
}
/** The plan of a record without a prescription: nothing of it is open, and no question stands. */
export function planOfBefore(assessment: KeptAssessment, decisions: Decisions): SettledPlan {
	const { footwear, sizing } = assessment
	const { reviewDate } = decisions
	return {
		gate: gateBefore(assessment, decisions),
		priorities: [],
		size: present({
			boots: sizing.insideLengthMm,
			trainers: sizing.trainers?.insideLengthMm,
		}),
		raise: raiseBefore(assessment, decisions),
		pairs: pairBefore(assessment, decisions),
		owned: ownedBefore(assessment),
		insert: perSide((side) => insertBefore(assessment, decisions, side)),
		changes: workBefore(footwear.modifications, decisions),
		lacing: workBefore(footwear.lacing, decisions),
		...(reviewDate !== undefined && { review: { date: reviewDate, because: [] } }),
		questions: [],
		setAside: [],
		open: [],
	}
}
