/**
 * One method per player over time: what the first visit rested on is kept wherever it can be
 * computed again.
 */

import type { StageMethod } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { adultStature } from './adult.ts'
import { maturityEstimates } from './estimate.ts'
import { growthFinding } from './says.ts'
import { isTreated } from './treated.ts'

/** In the order of preference. */
const order = ['percentAdultStature', 'mirwald', 'moore'] as const
const offsets = ['mirwald', 'moore'] as const
/** The methods as terms, for reasons. */
const methodTerms: Record<StageMethod, string> = {
	percentAdultStature: 'share-of-adult-stature',
	mirwald: 'mirwald-2002',
	moore: 'moore-2015',
}

function computable(visit: Visit, protocol: Protocol): readonly StageMethod[] {
	if (isTreated(visit)) return []
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const found = maturityEstimates(visit, age, protocol).offsets
	return order.filter((method) =>
		method === 'percentAdultStature'
			? adultStature(visit, age, protocol).predictedCm !== undefined
			: found[method] !== undefined,
	)
}
/**
 * `offset` is the maturity offset shown beside it; `before` the method of the first visit, where it
 * had to be left.
 */
export interface Chosen {
	method?: StageMethod
	offset?: 'mirwald' | 'moore'
	before?: { method: StageMethod; since: string }
}

/** The method of the first visit that allowed any, kept where possible; else the first in order. */
export function stageMethod(visit: Visit, earlier: readonly Visit[], protocol: Protocol): Chosen {
	const now = computable(visit, protocol)
	const then = earlier
		.filter(({ visitDate }) => visitDate < visit.visitDate)
		.toSorted((before, after) => (before.visitDate < after.visitDate ? -1 : 1))
		.map((earlierVisit) => ({
			since: earlierVisit.visitDate,
			methods: computable(earlierVisit, protocol),
		}))
	const first = then.find(({ methods }) => methods.length > 0)
	const kept = first?.methods[0]
	const method = kept && now.includes(kept) ? kept : now[0]
	const left = method && kept && first && kept !== method
	return present({
		method,
		offset: keptOffset(then, now),
		before: left ? { method: kept, since: first.since } : undefined,
	})
}
/** The offset first shown, kept where possible; else the first in order. */
function keptOffset(
	then: readonly { methods: readonly StageMethod[] }[],
	now: readonly StageMethod[],
): Chosen['offset'] {
	const shownThen = then.flatMap(
		({ methods }) => offsets.find((offset) => methods.includes(offset)) ?? [],
	)[0]
	if (shownThen && now.includes(shownThen)) return shownThen
	return offsets.find((offset) => now.includes(offset))
}
const unlike: Basis = {
	rule: 'one method over time',
	source:
		'Salter et al. 2021, Int J Sports Sci Coach, doi 10.1177/17479541211020418 (offsets and ' +
		'share of adult stature differ by -1.5 to 1 years)',
	strength: 'cohort',
}
/** A caution where the stage rests on another method than at the first visit. */
export function methodFindings({ method, before }: Chosen): Finding[] {
	if (!method || !before) return []
	return [
		growthFinding(
			state('growth.method-changed', { method, before: before.method, since: before.since }),
			'caution',
			[
				{ measure: 'stageMethod', value: methodTerms[method] },
				{ measure: 'stageMethodBefore', value: methodTerms[before.method] },
				{ measure: 'earlierVisit', value: before.since },
			],
			unlike,
		),
	]
}
