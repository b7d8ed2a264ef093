/** Takes out of a plan what a question proposed. What warns of a danger is never taken out. */
import { pairsLeftOff } from './owned.ts'
import type { SettledPlan } from './settled.ts'

const roleOf = (question: string): string => question.slice('pair.'.length)
type Take = (plan: SettledPlan) => SettledPlan
const none = { addMm: 0, madeBy: 'none', addedUnderHeelMm: 0 } as const
const takes: Readonly<Record<string, Take>> = {
	complaint: (plan) => ({ ...plan, ...(plan.load && { load: { exercises: [] } }) }),
	/** Lengths that rest on it go too: a pair without a length still says its sole and features. */
	size: (plan) => ({
		...plan,
		size: {},
		pairs: plan.pairs.map(({ insideLengthMm: _, ...pair }) => ({ ...pair, shelf: [] })),
	}),
	raise: (plan) => ({
		...plan,
		raise: {
			aim: { kind: 'none', because: [] },
			pairs: plan.raise.pairs.map(({ limits: _, ...pair }) => ({
				...pair,
				left: none,
				right: none,
				limits: [],
			})),
			steps: [],
		},
	}),
	owned: (plan) => ({
		...plan,
		owned: plan.owned.filter(({ id }) => pairsLeftOff(plan.owned).includes(id)),
	}),
	insert: ({ insertKept: kept, ...plan }) => ({
		...plan,
		...(kept && { insertKept: { ...kept, lines: [] } }),
		insert: {
			left: withoutElements(plan.insert.left),
			right: withoutElements(plan.insert.right),
		},
	}),
	changes: (plan) => ({
		...plan,
		changes: [],
		...(plan.questions.some(({ id }) => id === 'lacing') ? {} : { lacing: [] }),
	}),
	lacing: (plan) => ({ ...plan, lacing: [] }),
	review: ({ review: _, ...plan }) => plan,
}
const withoutElements = (insert: SettledPlan['insert']['left']): SettledPlan['insert']['left'] =>
	insert.state === 'held' ? insert : { state: 'not-needed', elements: [], pairs: [] }
/** @param question its id; the gate proposes nothing that could be taken out */
export function takeOut(plan: SettledPlan, question: string): SettledPlan {
	if (question.startsWith('pair.'))
		return { ...plan, pairs: plan.pairs.filter(({ role }) => role !== roleOf(question)) }
	return takes[question]?.(plan) ?? plan
}
