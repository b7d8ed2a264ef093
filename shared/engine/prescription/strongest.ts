/** What speaks most strongly for the proposal of a question: one reading, for its line. */
import type { Assessment } from '../findings/assessment.ts'
import { reading } from '../findings/finding.ts'
import { footnotes } from '../findings/footnotes.table.ts'
import { byWeight } from '../footwear/settle.ts'
import type { Because } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import type { PairRole } from '../visit/terms.ts'
import type { Planned } from './subjects.ts'

type Given = Pick<Assessment, 'findings' | 'sizing' | 'footwear' | 'insert'>
type Find = (plan: Planned, given: Given) => Because | undefined

/** The first reading of findings, most consequential first. */
const firstOf = (ids: readonly string[], { findings }: Given): Because | undefined =>
	findings.find(
		({ id, code, because }) => ids.includes(id) && because.length > 0 && !footnotes.has(code),
	)?.because[0]
const size: Find = (_plan, { sizing: { fitLengthMm, decidedByFoot } }) => {
	if (fitLengthMm === undefined) return undefined
	const side = decidedByFoot === 'equal' ? undefined : decidedByFoot
	return reading('fitLengthMm', fitLengthMm, 'mm', side)
}
const raise: Find = ({ raise: { aim } }) => aim.because[0]
const pair =
	(role: PairRole): Find =>
	({ pairs }, { footwear: { target } }) => {
		const sought = pairs.flatMap((one) => (one.role === role ? [...one.seek, ...one.avoid] : []))
		const wishes = [...target.seek, ...target.avoid].filter(
			({ roles, because }) => because.length > 0 && (roles?.includes(role) ?? true),
		)
		const [strongest] = byWeight(wishes, sought)
		return wishes.find(({ feature }) => feature === strongest)?.because[0]
	}
/** The most urgent verdict. */
const owned: Find = ({ owned: pairs }, given) =>
	firstOf(
		pairs.filter(({ verdict }) => verdict !== 'keep').flatMap(({ because }) => because),
		given,
	)
/** What every device has needs no reason. */
const plainElements = ['device', 'shell', 'cover', 'length', 'heel-cup']
const insert: Find = ({ insert: plan }, { insert: made }) =>
	bothSides
		.flatMap((side) =>
			made[side].elements.filter(({ element }) => plan[side].elements.includes(element)),
		)
		.toSorted(
			(one, other) =>
				Number(plainElements.includes(one.element)) - Number(plainElements.includes(other.element)),
		)
		.find(({ because }) => because.length > 0)?.because[0]
const work =
	(of: (plan: Planned) => readonly string[]): Find =>
	(plan, { footwear: { modifications = [], lacing = [] } }) =>
		[...modifications, ...lacing].find(
			({ id, side, because }) => of(plan).includes(`${id}.${side}`) && because.length > 0,
		)?.because[0]
/** A yes to a warning sign tells nothing without its question. */
const review: Find = ({ review: planned }, given) =>
	firstOf(planned?.because.filter((id) => !id.startsWith('screening.')) ?? [], given)
/** The line names what the player has. */
const complaint =
	(read: readonly string[]): Find =>
	(_plan, given) =>
		firstOf(
			read.filter((id) => id.startsWith('loading.')),
			given,
		)
/** That a rule was not met is no reason to a reader; what was not asked is. */
const gate =
	(read: readonly string[]): Find =>
	(_plan, { findings }) =>
		findings
			.filter(({ id }) => read.includes(id))
			.flatMap(({ because }) => because)
			.find(({ measure }) => measure !== 'screeningAnswers')
const finders: Readonly<Record<string, Find>> = {
	size,
	raise,
	owned,
	insert,
	changes: work(({ changes, lacing }) => [...changes, ...lacing]),
	lacing: work(({ lacing }) => lacing),
	review,
}
/**
 * @param read the findings under the question: where nothing else speaks for it, the first of them
 * @returns undefined where nothing that could be named speaks for it
 */
export function strongestReason(
	id: string,
	read: readonly string[],
	plan: Planned,
	given: Given,
): Because | undefined {
	if (id === 'complaint') return complaint(read)(plan, given)
	if (id === 'gate') return gate(read)(plan, given)
	const find = id.startsWith('pair.') ? pair(id.slice('pair.'.length) as PairRole) : finders[id]
	return find ? find(plan, given) : firstOf(read, given)
}
