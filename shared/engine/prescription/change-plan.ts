/** Puts the fields of a changed answer into a plan. One function for each question. */
import { isHeld } from '../facts/held.ts'
import type {
	Kept,
	OwnedPair,
	PerSide,
	RaiseInPair,
	RolePair,
	Span,
} from '../findings/assessment.ts'
import type { AnswerFields } from '../visit/answers.ts'
import { rounded } from '../visit/sides.ts'
import type { PlannedFrom, SettledPlan } from './settled.ts'

type Change = (plan: SettledPlan, fields: AnswerFields, from: PlannedFrom) => SettledPlan
type Pair = Kept<RolePair>
type Raised = Kept<RaiseInPair>

const complaint: Change = (plan, { load: own }) =>
	own ? { ...plan, load: { exercises: [], ...plan.load, own } } : plan
/** Trainers follow boots: what was moved for a boot is moved for them by the same. */
function moved(span: Span, { from, to }: { from: Span; to: Span }): Span {
	const by = (key: keyof Span) => rounded(span[key] + to[key] - from[key], 1)
	return { min: by('min'), target: by('target'), max: by('max') }
}
const boots = ['match', 'training']
const size: Change = (plan, { insideLengthMm: to }, from) => {
	if (!to) return plan
	const was = plan.size.boots
	const trainers = was && plan.size.trainers && moved(plan.size.trainers, { from: was, to })
	const lengthOf = (pair: Pair): Span | undefined => {
		if (boots.includes(pair.role) || !pair.insideLengthMm || !was) return to
		return moved(pair.insideLengthMm, { from: was, to })
	}
	return {
		...plan,
		size: { boots: to, ...(trainers && { trainers }) },
		pairs: plan.pairs.map((pair) => {
			const span = lengthOf(pair)
			return { ...pair, ...(span && { insideLengthMm: span }), shelf: within(pair, span, from) }
		}),
	}
}
/** Models whose size lies in the length that stands. */
function within({ shelf }: Pair, span: Span | undefined, { footwear }: PlannedFrom): string[] {
	if (!span) return shelf
	return shelf.filter((id) => {
		const lengthMm = footwear.ranked.find((model) => model.id === id)?.size.insideLengthMm
		return lengthMm !== undefined && lengthMm >= span.min && lengthMm <= span.max
	})
}
/** Another height in one foot: what stands under the heel moves with it. */
function footRaised(foot: Raised['left'], addMm: number): Raised['left'] {
	const by = addMm - foot.addMm
	const above = foot.heelAboveForefootMm
	return {
		...foot,
		addMm,
		madeBy: addMm === 0 ? 'none' : foot.madeBy === 'none' ? 'wedge' : foot.madeBy,
		addedUnderHeelMm: Math.max(0, rounded(foot.addedUnderHeelMm + by, 1)),
		...(above !== undefined && { heelAboveForefootMm: rounded(above + by, 1) }),
	}
}
const bare = { addMm: 0, madeBy: 'none', addedUnderHeelMm: 0 } as const
const pairRaised = (pair: Raised, { left, right }: PerSide<number>): Raised => ({
	...pair,
	left: footRaised(pair.left, left),
	right: footRaised(pair.right, right),
})
/** Steps tell the heights that were proposed: those that add anything go with them. */
const raise: Change = (plan, { raise: given = [] }) => {
	const known = plan.raise.pairs.map((pair) => {
		const to = given.find((one) => one.pair === pair.pair)
		return to ? pairRaised(pair, to) : pair
	})
	const added = given
		.filter((one) => !known.some(({ pair }) => pair === one.pair))
		.map((one) =>
			pairRaised(
				{ pair: one.pair, offsetFrom: 'unknown', left: bare, right: bare, limits: [] },
				one,
			),
		)
	const steps = plan.raise.steps.filter(({ addMm }) => addMm.left === 0 && addMm.right === 0)
	return { ...plan, raise: { ...plan.raise, pairs: [...known, ...added], steps } }
}
/** A purchase that is not wanted leaves what the player has; one that is wanted is bought. */
const meansOf = ({ means }: Pair, buy: boolean | undefined): Pair['means'] => {
	if (buy === true) return 'buy'
	return buy === false && means === 'buy' ? 'with-what-you-have' : means
}
/**
 * Where several soles serve one role, another sole is meant for the first, and a model stands with
 * the pair for which it was proposed, else with the first.
 */
const pairOf =
	(role: string): Change =>
	(plan, { sole, seek, avoid, models, buy }) => {
		const ofRole = plan.pairs.filter((pair) => pair.role === role)
		const [first] = ofRole
		const standsWith = (pair: Pair, model: string) =>
			(ofRole.find(({ shelf }) => shelf.includes(model)) ?? first) === pair
		return {
			...plan,
			pairs: plan.pairs.map((pair) =>
				pair.role === role
					? {
							...pair,
							...(sole && pair === first && { sole }),
							...(seek && { seek }),
							...(avoid && { avoid }),
							...(models && { shelf: models.filter((model) => standsWith(pair, model)) }),
							means: meansOf(pair, buy),
						}
					: pair,
			),
		}
	}
const owned: Change = (plan, { verdicts = [] }) => {
	const judged = plan.owned.map((pair) => {
		const given = verdicts.find(({ id }) => id === pair.id)
		if (!given) return pair
		const { by: _, ...rest } = pair
		return { ...rest, verdict: given.verdict, ...(given.by !== undefined && { by: given.by }) }
	})
	const turned = judged.filter(({ verdict }, at) => verdict !== plan.owned[at]?.verdict)
	return turned.reduce(withVerdict, { ...plan, owned: judged })
}
/** Whether a pair may go on being worn for a role. */
const mayBeWorn = ({ verdict }: Pick<OwnedPair, 'verdict'>, role: string): boolean =>
	verdict === 'keep' || verdict === 'modify' || (verdict === 'training-only' && role !== 'match')
/**
 * What another verdict does to the rest of the plan: a pair that goes serves no role, and one that
 * stays serves those that its sole suits; nothing is put into one that is not to be worn.
 */
function withVerdict(plan: SettledPlan, pair: Kept<OwnedPair>): SettledPlan {
	const { id, verdict } = pair
	const isLeftOff = verdict === 'stop-wearing'
	const worn = (insert: SettledPlan['insert']['left']) =>
		isLeftOff ? { ...insert, pairs: insert.pairs.filter((other) => other !== id) } : insert
	return {
		...plan,
		pairs: plan.pairs.map((wanted) => servedBy(wanted, pair, isHeld(plan.gate, 'purchase'))),
		raise: {
			...plan.raise,
			pairs: plan.raise.pairs.map((raised) =>
				isLeftOff && raised.pair === id ? { ...raised, left: bare, right: bare } : raised,
			),
		},
		insert: { left: worn(plan.insert.left), right: worn(plan.insert.right) },
	}
}
function servedBy(wanted: Pair, pair: Kept<OwnedPair>, noPurchase: boolean): Pair {
	const isWorn = mayBeWorn(pair, wanted.role)
	if (wanted.ownedPair === pair.id && !isWorn) {
		const { ownedPair: _, ...left } = wanted
		return { ...left, means: noPurchase ? left.means : 'buy' }
	}
	const serves = wanted.ownedPair === pair.id || wanted.couldServe?.includes(pair.id)
	if (!isWorn || !serves) return wanted
	const means = pair.verdict === 'modify' ? 'with-what-you-have' : 'keep'
	return wanted.ownedPair === undefined
		? { ...wanted, ownedPair: pair.id, means, shelf: [] }
		: wanted
}
/** What is done to the insert that is worn; nothing on a limb whose insert is held. */
function keptAs({ insert: sides, insertKept: kept }: SettledPlan, { adjust, anew }: AnswerFields) {
	if (!kept) return {}
	const { anew: _, ...rest } = kept
	const lines = (adjust ?? kept.lines).filter(({ side }) => sides[side].state !== 'held')
	return { insertKept: { ...rest, lines, ...(anew && { anew: true as const }) } }
}
/** Elements that stand, as `left.heel-cup`. */
const insert: Change = (before, fields) => {
	const { keep } = fields
	const plan = { ...before, ...keptAs(before, fields) }
	if (!keep) return plan
	const kept = (side: 'left' | 'right'): SettledPlan['insert']['left'] => {
		const proposed = plan.insert[side]
		if (proposed.state === 'held') return proposed
		const elements = proposed.elements.filter((element) => keep.includes(`${side}.${element}`))
		return elements.length > 0
			? { ...proposed, elements }
			: { state: 'not-needed', elements: [], pairs: [] }
	}
	return { ...plan, insert: { left: kept('left'), right: kept('right') } }
}
const onlyKept = (ids: readonly string[], keep: readonly string[]): string[] =>
	ids.filter((id) => keep.includes(id))
/** Lacing stands under changes where it has no question of its own. */
const changes: Change = (plan, { keep }) => {
	if (!keep) return plan
	const lacingAsked = plan.questions.some(({ id }) => id === 'lacing')
	return {
		...plan,
		changes: onlyKept(plan.changes, keep),
		lacing: lacingAsked ? plan.lacing : onlyKept(plan.lacing, keep),
	}
}
const lacing: Change = (plan, { keep }) =>
	keep ? { ...plan, lacing: onlyKept(plan.lacing, keep) } : plan
const review: Change = (plan, { reviewDate }) =>
	reviewDate === undefined
		? plan
		: { ...plan, review: { date: reviewDate, because: plan.review?.because ?? [] } }
const byQuestion: Readonly<Record<string, Change>> = {
	complaint,
	size,
	raise,
	owned,
	insert,
	changes,
	lacing,
	review,
}
/** What a changed answer to a question does. @param question its id */
export function changeOf(question: string): Change {
	if (question.startsWith('pair.')) return pairOf(question.slice('pair.'.length))
	return byQuestion[question] ?? ((plan) => plan)
}
