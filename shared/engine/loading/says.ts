/** How the loading room says a finding; it is of the whole player, so it has no side. */
import { type Finding, findingOf, type Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Statement } from '../words/statement.ts'

/** A finding whose id is its code. */
export const loadingFinding = (
	statement: Statement,
	level: Level,
	because: Because[],
	basis: Basis,
): Finding => findingOf(statement, { id: statement.code, side: 'none', level, because, basis })
