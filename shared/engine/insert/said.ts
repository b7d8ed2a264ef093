/** Statements of the rows of a table, and cautions as an element keeps them. */
import type { InsertElement } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Params } from '../words/sentence.ts'
import { type Stated, type Statement, type StatementCode, state } from '../words/statement.ts'
import type { CautionRow } from './elements/row.ts'

/** States what a row names; that its figures fill the sentence is a matter of the table. */
export const stateOf = (code: StatementCode, params: Params): Statement =>
	(state as (code: StatementCode, params: Params) => Statement)(code, params)
/** States a caution of a row, its figures read from the protocol. */
export const cautionOf = ({ code, figures = {} }: CautionRow, protocol: Protocol): Statement =>
	stateOf(
		code,
		Object.fromEntries(Object.entries(figures).map(([name, key]) => [name, protocol.value(key)])),
	)
/** Cautions as sentences, and as the statements that they come from. */
export const cautionsOf = (
	statements: readonly Stated[],
): Required<Pick<InsertElement, 'cautions' | 'cautioned'>> => ({
	cautions: statements.map(({ says }) => says),
	cautioned: [...statements],
})
/** The element with one more caution. */
export const withCaution = (element: InsertElement, caution: Statement): InsertElement => ({
	...element,
	...cautionsOf([...(element.cautioned ?? []), caution]),
})
