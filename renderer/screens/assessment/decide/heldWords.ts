/** What is held, and until when, in words of the screen. Pure. */
import type {
	Assessment,
	Gate,
	Hold,
	Holdable,
	HoldUntil,
} from '../../../../shared/engine/findings/assessment.ts'

const holdableWords: Readonly<Record<Holdable, string>> = {
	sport: 'sport',
	match: 'matches',
	impact: 'running and jumping',
	purchase: 'buying footwear',
	shelf: 'models of the shelf',
	season: 'the season plan',
	raise: 'heel raise',
	weight: 'weight on the limb',
	test: 'tests of the limb',
	exercise: 'exercise of the limb',
	insert: 'insert',
}
const lifted: Readonly<Record<HoldUntil, string>> = {
	outcome: 'lifted when the outcome is written',
	'imaging-result': 'lifted when the result of the imaging is written',
	'treating-doctor': 'lifted when the treating doctor clears it',
	surgeon: 'lifted when the surgeon clears it',
	'foot-protection-review': 'lifted by a foot-protection review',
}
const gateParts = ['person', 'left', 'right'] as const
const where: Readonly<Record<(typeof gateParts)[number], string>> = {
	person: 'the player',
	left: 'left limb',
	right: 'right limb',
}
/** Holds of one rule: what it holds, where, and what lifts it. */
export interface HeldBy {
	key: string
	where: string
	what: string
	lifted: string
	since: string
}
/** The holds of a gate, those of one rule and limb together. */
export function heldBy(gate: Gate): HeldBy[] {
	return gateParts.flatMap((part) => {
		const byRule = new Map<string, Hold[]>()
		for (const hold of gate[part].holds)
			byRule.set(hold.rule, [...(byRule.get(hold.rule) ?? []), hold])
		return [...byRule].flatMap(([rule, holds]) =>
			holds.slice(0, 1).map(({ until, since }) => ({
				key: `${part} ${rule}`,
				where: where[part],
				what: holds.map(({ what }) => holdableWords[what]).join(', '),
				lifted: lifted[until],
				since,
			})),
		)
	})
}
/** The grey line of a held question: its own sentence, and that an outcome lifts it. */
export function heldLine({ prescription: { gate } }: Assessment, says: string): string {
	const untils = new Set(gateParts.flatMap((part) => gate[part].holds.map(({ until }) => until)))
	const [only] = untils.size === 1 ? untils : []
	return `${says.replace(/\.$/, '')}, ${lifted[only ?? 'outcome']}`
}
