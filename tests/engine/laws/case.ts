/** One visit with what is made of it: what every law of the plan looks at. */
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { settleAll } from '../../../shared/engine/prescription/answers.ts'
import { openProtocol } from '../../../shared/engine/protocol/protocol.ts'
import { type Decisions, noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { parseShelf } from '../../../shared/engine/visit/shelf.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { agreed } from '../../agreed.ts'
import { json } from '../../demo.ts'

export interface Case {
	visit: Visit
	earlier: readonly Visit[]
	assessment: Assessment
}
/** What is wrong with a case, a line each; none where the law is kept. */
export type Law = (one: Case) => string[]

const parsed = parseShelf(json('shelf.json'))
if (!parsed.ok) throw new Error('the demo shelf is not read')
export const shelf = parsed.value
export const protocol = openProtocol()
export const assessed = (visit: Visit, earlier: readonly Visit[] = []): Assessment =>
	assess(visit, earlier, protocol, shelf)
export const caseOf = (visit: Visit, earlier: readonly Visit[] = []): Case => ({
	visit,
	earlier,
	assessment: assessed(visit, earlier),
})
/** Every question settled as proposed, and nothing else done but that it was agreed to. */
export const settledAlone = ({ assessment }: Case): Decisions => ({
	...settleAll(noDecisions, assessment.prescription, 'not asked today'),
	...agreed,
})
/** A line where something is not so. */
export const unless = (holds: boolean, fault: string): string[] => (holds ? [] : [fault])
/** Those that stand more than once. */
export const twice = (ids: readonly string[]): string[] => [
	...new Set(ids.filter((id, index) => ids.indexOf(id) !== index)),
]
export const idsOf = (things: readonly { id: string }[]): string[] => things.map(({ id }) => id)
