/** The plan that stands, and what a page that is made of it is made from. */

import { digestOf } from '../../../shared/engine/plain/canonical.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { KindInput } from '../../../shared/engine/report/kinds.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import type { PlanThen } from '../visits/freezing.ts'
import { basisDigest, stopped } from './basis.ts'
import { type KeptPlan, lastPlan, lastSeason } from './records.ts'

/** Whether a plan still fits the sessions, and the pairs and findings it rests on. */
export const isUpToDate = (
	{ players }: Pick<Memory, 'players'>,
	deps: Deps,
	playerId: string,
	{ value }: KeptPlan,
	basis: string,
): boolean => value.season === lastSeason(players, deps, playerId)?.record && value.basis === basis

/** What a page of a plan is made from: the same gives the same page, which is made once. */
export const madeFrom = (planned: KeptPlan, paper: string, clinic: Clinic): string =>
	digestOf({ plan: planned.record, paper, clinic: { ...clinic, clinician: undefined } })

/**
 * The plan that stands for a visit as it is signed; undefined where there is none that may be given
 * out.
 */
export function planThen(
	memory: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	playerId: string,
	{ visit, decisions, earlier = [], clinic, assessment }: KindInput,
): PlanThen | undefined {
	const planned = readablePlan(memory, deps, playerId)
	if (!planned) return undefined
	const basis = {
		from: 'visit' as const,
		visit,
		decisions,
		earlier: [...earlier],
		kept: assessment,
	}
	if (stopped(basis, memory.clinic.protocol) !== undefined) return undefined
	if (!isUpToDate(memory, deps, playerId, planned, basisDigest(basis))) return undefined
	const { plan } = planned.value
	return present({ plan, version: planned.version, from: madeFrom(planned, 'A4', clinic) })
}
/** A plan that cannot be read keeps no visit from being signed: the page of the season names it. */
function readablePlan({ players }: Pick<Memory, 'players'>, deps: Deps, playerId: string) {
	try {
		return lastPlan(players, deps, playerId)
	} catch {
		return undefined
	}
}
