/** Changes to the footwear and ways to lace it, in the player's words. */

import { isHeld } from '../../facts/held.ts'
import type { FootwearWork, Kept } from '../../findings/assessment.ts'
import { together } from '../../words/en/format.ts'
import { heading, type Section, say } from '../base.ts'
import type { ReportInput } from '../inputs.ts'
import { workKey, workTitle } from '../marked.ts'
import { planOf } from '../plan-of.ts'
import { isRaised } from '../raise-lines.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'

type Work = Kept<FootwearWork>
/** What is done, where it ends, what to mind; nothing where there are no words for the player. */
function workToDo(work: Work, reader: Reader): string[] {
	const { name: called, limits, cautions = [] } = work.stated ?? {}
	const name = called && toldBy(reader, called)
	const said = [work, limits, ...cautions].flatMap(
		(statement) => (statement && toldBy(reader, statement)) ?? [],
	)
	if (name === undefined) return said.length > 0 ? [together(...said)] : []
	return [together(`${workTitle({ name, side: work.side })}.`, ...said)]
}
/** What the plan does to a pair: all of it, or the repairs alone while sport is held. */
function idsOf(input: ReportInput): string[] {
	const { gate, owned, changes, lacing } = planOf(input)
	const repairs = owned.flatMap(({ work }) => work)
	return isHeld(gate, 'sport') ? repairs : [...changes, ...lacing, ...repairs]
}
/** The raise has a section of its own. */
const ofRaise = 'heel-raise'
export const work: Section = (input, _notes, t) => {
	const { modifications = [], lacing = [] } = input.assessment.footwear
	const plan = planOf(input)
	const ids = new Set(idsOf(input))
	const noRaise = isRaised(plan) || isHeld(plan.gate, 'raise')
	const reader = readerOf('player', input)
	const items = [...modifications, ...lacing]
		.filter((one) => ids.has(workKey(one)) || ids.has(one.id))
		.filter(({ id }) => !(noRaise && id === ofRaise))
		.flatMap((one) => workToDo(one, reader))
	if (items.length === 0) return []
	const isLaced = lacing.some((one) => ids.has(workKey(one)))
	return [
		heading(t('player.work')),
		{ kind: 'list', items: [...new Set(items)] },
		...(isLaced ? [say(t('player.lacing'))] : []),
	]
}
