/** What is held here, since when, and what ends it: for whoever can end it. */
import type { Holdable } from '../../findings/assessment.ts'
import type { SettledPlan } from '../../prescription/settled.ts'
import { bothSides } from '../../visit/sides.ts'
import { listed } from '../../words/en/format.ts'
import { holdableNames, untilNames } from '../../words/en/gate.ts'
import { capital, dateWords, sideWords } from '../../words/words.ts'
import { heading, type Section } from '../base.ts'
import { planOf } from '../plan-of.ts'

/** What a doctor is told of: buying, shelf and season are this clinic's own affair. */
const toldHolds = [
	'sport',
	'match',
	'impact',
	'weight',
	'test',
	'exercise',
	'insert',
	'raise',
] as const satisfies readonly Holdable[]
type Told = (typeof toldHolds)[number]
/** One thing that is held: on which limbs, since when at the earliest, and all that has to end it. */
interface HeldThing {
	what: Told
	where: string
	since: string
	until: string
}
function heldThing(gate: SettledPlan['gate'], what: Told): HeldThing[] {
	const onLimb = bothSides.filter((side) => gate[side].holds.some((hold) => hold.what === what))
	const found = [gate.person, gate.left, gate.right]
		.flatMap(({ holds }) => holds)
		.filter((hold) => hold.what === what)
	const [since] = found.map((hold) => hold.since).toSorted()
	if (since === undefined) return []
	const [side, other] = onLimb
	const where = other ? sideWords.both : side ? sideWords[side] : ''
	const untils = new Set(found.map(({ until }) => untilNames[until]))
	return [{ what, where, since, until: listed([...untils]) }]
}
/** What is held alike stands in one line. */
export const holds: Section = (input, _notes, t) => {
	const { gate } = planOf(input)
	const held = toldHolds.flatMap((what) => heldThing(gate, what))
	const alike = Map.groupBy(held, ({ where, since, until }) => `${where} ${since} ${until}`)
	const items = [...alike.values()].flatMap((group) => {
		const [first] = group
		if (!first) return []
		const named = listed(group.map(({ what }) => holdableNames[what]))
		return [
			t('referral.hold', {
				what: capital(first.where ? `${named} (${first.where})` : named),
				until: first.until,
				since: dateWords(first.since),
			}),
		]
	})
	if (items.length === 0) return []
	return [heading(t('referral.holds')), { kind: 'list', items }]
}
