/** The insert of the plan: what it is for, where it is worn, how it is worn in, when it comes out. */
import type { Gate, Holdable } from '../../findings/assessment.ts'
import type { DecidedElement, DecidedInsert } from '../../insert/decided.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Side } from '../../visit/visit.ts'
import type { Speak } from '../../words/speak.ts'
import { type Stated, type StatementCode, state } from '../../words/statement.ts'
import { capital } from '../../words/words.ts'
import { adjustmentsOf } from '../adjustments-of.ts'
import { heading, type Section, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { insertOf } from '../insert-of.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'
import { waits } from '../waits.ts'
import { ladder, sideBySide } from './ladder.ts'

/** What a player is told of an element: what it does, and what to mind. */
const toldOf = (reader: Reader, { element }: DecidedElement): string[] =>
	[element, ...(element.cautioned ?? [])].flatMap((statement) => toldBy(reader, statement) ?? [])
/** Steps of wearing in that wait with running and jumping, or with matches. */
const stepsOf: readonly (readonly [what: Holdable, codes: readonly StatementCode[]])[] = [
	[
		'impact',
		['insert.wear-first-training', 'insert.wear-second-training', 'insert.wear-third-training'],
	],
	['impact', ['insert.wear-match']],
	['match', ['insert.wear-match']],
]
const stepWaits = ({ code }: Stated, gate: Gate): boolean =>
	stepsOf.some(([what, codes]) => waits(gate, what) && codes.some((one) => one === code))
/** What is minded all the while, and stands apart from the steps. */
const afterWearIn: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'insert.wear-review',
	'insert.wear-stop',
])
/** What is worn alike on both feet is said once. */
function linesOf(said: readonly { side: Side; says: string }[], t: Speak): string[] {
	const alike = Map.groupBy(said, ({ says }) => says)
	return [...alike].map(([says, sides]) => {
		const [first] = sides
		const where = sides.length > 1 || !first ? 'both' : first.side
		return `${capital(t(`common.${where}`))}: ${says}`
	})
}
/** How it is worn in, and what is minded all the while, in the words of the reader. */
export function insertSteps(
	reader: Reader,
	{ result }: Pick<DecidedInsert, 'result'>,
	gate: Gate,
): [wearIn: string[], minding: string[]] {
	const steps = result.wearIn.filter((step) => !stepWaits(step, gate))
	const those = (isAfter: boolean) =>
		steps
			.filter(({ code }) => afterWearIn.has(code) === isAfter)
			.flatMap((step) => toldBy(reader, step) ?? [])
	return [those(false), those(true)]
}
/** Of a limb whose insert waits, while the other has one: only that it waits. */
export const insertsWaiting = (reader: Reader, gate: Gate): string[] =>
	bothSides
		.filter((side) => waits(gate, 'insert', side))
		.flatMap((side) => toldBy(reader, state('insert.held', { side, until: [] })) ?? [])
/** What is done to the one that is worn, in the words of the reader. */
function adjustedLines(input: ReportInput, reader: Reader, t: Speak): Block[] {
	const { lines = [] } = adjustmentsOf(input) ?? {}
	const items = lines.flatMap((line) => toldBy(reader, state('insert.adjust', { line })) ?? [])
	if (items.length === 0) return []
	return [heading(t('player.insertAdjusted')), { kind: 'list', items: [...new Set(items)] }]
}
export const insert: Section = (input, _notes, t) => {
	const plan = planOf(input)
	const standing = insertOf(input)
	const reader = readerOf('player', input)
	const feet = bothSides.filter((side) => !waits(plan.gate, 'insert', side))
	const said = feet.flatMap((side) => {
		const says = [...new Set(standing[side].flatMap((one) => toldOf(reader, one)))].join(' ')
		return says === '' ? [] : [{ side, says }]
	})
	const items = linesOf(said, t)
	const changed = adjustedLines(input, reader, t)
	if (items.length === 0) return changed
	const pairs = [...new Set(feet.flatMap((side) => plan.insert[side].pairs))].map((id) =>
		pairName(id, input.visit, t),
	)
	const [wearIn, minding] = insertSteps(reader, standing, plan.gate)
	return [
		...changed,
		heading(t('player.insert')),
		...sideBySide(
			[
				{ kind: 'list', items },
				...insertsWaiting(reader, plan.gate).map(say),
				...(pairs.length > 0 ? [say(t('player.insertIn', { pairs: pairs.join(', ') }))] : []),
				...(minding.length > 0 ? [{ kind: 'list' as const, items: minding }] : []),
			],
			ladder(t('player.insertWearIn'), wearIn),
		),
	]
}
