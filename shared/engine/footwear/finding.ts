/** How the footwear room says a finding. */
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Statement } from '../words/statement.ts'

/** A finding of the room; its id, `footwear.` and what is given, is older than the rule of ids. */
export const footwearFinding = (
	id: string,
	level: Finding['level'],
	statement: Statement,
	because: Because[],
	basis: Basis,
	side: Finding['side'] = 'none',
): Finding => findingOf(statement, { id: `footwear.${id}`, side, level, because, basis })
