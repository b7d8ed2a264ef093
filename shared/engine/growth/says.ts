/** How the growth room says a finding, and what every estimate has to carry with it. */
import { type Finding, findingOf, type Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Statement, state } from '../words/statement.ts'

/**
 * A finding of the growth room; it is of the whole player, so it has no side, and its id is its code
 * unless one is given.
 */
export const growthFinding = (
	statement: Statement,
	level: Level,
	because: Because[],
	basis: Basis,
	id: string = statement.code,
): Finding => findingOf(statement, { id, side: 'none', level, because, basis })

const bias: Basis = {
	rule: 'known bias of maturity estimates',
	source: 'Koziel and Malina, Sports Med 2018;48:221-236; Salter et al. 2021',
	strength: 'cohort',
}
const cautions: readonly Finding[] = [
	growthFinding(state('growth.one-method'), 'note', [], bias),
	growthFinding(state('growth.bias'), 'note', [], bias),
	growthFinding(state('growth.not-for'), 'note', [], {
		rule: 'limits of use',
		source: 'limits stated with the equations; common practice',
		strength: 'expert',
	}),
	growthFinding(state('growth.population'), 'note', [], {
		rule: 'whom the equations come from',
		source:
			'Khamis and Roche, Pediatrics 1994;94(4):504-507 (white American children, stated by ' +
			'the authors); samples of the offset equations from memory',
		strength: 'cohort',
	}),
	growthFinding(state('growth.privacy'), 'note', [], {
		rule: 'privacy of minors',
		source: 'common practice, no source',
		strength: 'practice',
	}),
]
const girlsCaution = growthFinding(state('growth.girls'), 'note', [], bias)
/** What every growth estimate has to carry with it: of the method, so nothing to settle. */
export function standingCautions(girl: boolean, protocol: Protocol): Finding[] {
	const basis = protocol.basis('use of maturity estimates', 'growth.offsetErrorYears')
	const estimate = growthFinding(state('growth.estimate'), 'note', [], basis)
	return [estimate, ...cautions, ...(girl ? [girlsCaution] : [])]
}
