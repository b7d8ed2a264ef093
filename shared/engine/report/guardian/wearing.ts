/** How new boots, a raise and an insert are worn in, each unless it waits or is not to be shown. */
import { bothSides } from '../../visit/sides.ts'
import type { PairRole } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, sideWords } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import type { Block, InnerBlock } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { insertOf } from '../insert-of.ts'
import { pairName } from '../pair-names.ts'
import { planOf } from '../plan-of.ts'
import { insertSteps, insertsWaiting } from '../player/insert.ts'
import { ladder, sideBySide } from '../player/ladder.ts'
import { raiseSteps } from '../player/raise.ts'
import { isRaised, raiseLines } from '../raise-lines.ts'
import { isKeptFrom, type Reader } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'
import type { Part } from './part.ts'

/** Steps, and beside them when to stop. */
interface Ladder {
	title: string
	about: string[]
	steps: string[]
	after: string[]
}
function ofRaise(reader: Reader, input: ReportInput, t: Speak): Ladder[] {
	const plan = planOf(input)
	if (!isRaised(plan) || waits(plan.gate, 'raise')) return []
	const [steps, after] = raiseSteps(reader, plan)
	const about = raiseLines(plan, input.visit, t).map((raise) => t('guardian.raise', { raise }))
	return [{ title: t('guardian.raiseWear'), about, steps, after }]
}
function ofInsert(reader: Reader, input: ReportInput, t: Speak): Ladder[] {
	const { gate, insert } = planOf(input)
	const standing = insertOf(input)
	const sides = bothSides.filter((side) => standing[side].length > 0)
	const [side, other] = sides
	if (side === undefined) return []
	const [steps, after] = insertSteps(reader, standing, gate)
	const pairs = [...new Set(sides.flatMap((one) => insert[one].pairs))].map((id) =>
		pairName(id, input.visit, t),
	)
	const about = [
		t('guardian.insertFor', { feet: other ? sideWords.both : sideWords[side] }),
		...(pairs.length > 0 ? [t('player.insertIn', { pairs: pairs.join(', ') })] : []),
		...insertsWaiting(reader, gate),
	]
	return [{ title: t('guardian.insertWear'), about, steps, after }]
}
const onOf = ({ title, about, steps }: Ladder): InnerBlock[] => [
	say(about.map(capital).join(' ')),
	...ladder(title, steps),
]
const afterOf = ({ after }: Ladder): InnerBlock[] =>
	after.length > 0 ? [{ kind: 'list', items: after }] : []
/** Two stand beside each other, each whole; of one, the end stands beside the beginning. */
function ladderBlocks([first, second]: readonly Ladder[]): Block[] {
	if (!first) return []
	if (!second) return sideBySide(onOf(first), afterOf(first))
	return sideBySide([...onOf(first), ...afterOf(first)], [...onOf(second), ...afterOf(second)])
}
/** Roles whose pairs are boots. */
const bootRoles: readonly PairRole[] = ['match', 'training']
function ofBoots(input: ReportInput, t: Speak): Block[] {
	const { gate, questions, pairs } = planOf(input)
	const isBought =
		questions.length === 0 ||
		pairs.some(({ means, role }) => means === 'buy' && bootRoles.includes(role))
	const isHeld = buyingWaits(gate) || waits(gate, 'match') || waits(gate, 'impact')
	return isBought && !isHeld ? [say(t('guardian.wearBoots'))] : []
}
export const wearing: Part = (input, reader, t) => {
	const ladders = isKeptFrom(reader, input, 'insert')
		? []
		: [...ofRaise(reader, input, t), ...ofInsert(reader, input, t)]
	const blocks = [...ofBoots(input, t), ...ladderBlocks(ladders)]
	return blocks.length === 0 ? [] : [heading(t('guardian.wear')), ...blocks]
}
