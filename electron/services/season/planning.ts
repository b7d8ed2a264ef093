/** A season planned in a thread of its own, watched and cancelled meanwhile. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { planDifference } from '../../../shared/engine/season/difference.ts'
import { keepPast } from '../../../shared/engine/season/past.ts'
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { StatedError } from '../../../shared/engine/words/stated.ts'
import { state } from '../../../shared/engine/words/statement.ts'
import { planSeason } from '../../solver/plan.ts'
import { SolveCancelled } from '../../solver/solve.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { assessmentAsKept, type Basis, basisDigest, firstDay, needBasis, stopped } from './basis.ts'
import { keepNext, lastPlan, lastSeason } from './records.ts'

/** @throws Refusal where a warning sign stops the rotation or no pair can be planned */
function checkBasis(basis: Basis, protocol: ProtocolFile): void {
	const blocked = stopped(basis, protocol)
	if (blocked !== undefined) throw new Refusal('season.blocked', blocked)
	if (basis.visit.footwear?.some((pair) => pair.sole !== undefined)) return
	throw new Refusal(
		'season.no-pair',
		state('season.no-sole-recorded', { visitDate: basis.visit.visitDate }),
	)
}
/** A failure that is told becomes a refusal; other errors go on as they are. */
function refusalOf(error: unknown): unknown {
	if (!(error instanceof StatedError)) return error
	const code = error instanceof SolveCancelled ? 'season.cancelled' : 'season.could-not-be-planned'
	return new Refusal(code, { ...error.said, says: error.message })
}
/** What a plan is solved from. */
interface Task {
	basis: Basis
	season: Season
	from: string
	earlier: Plan | undefined
}
/** Solves while the run stands among those of the season's memory. @throws Refusal in words */
async function solve(
	{ clinic, season: running }: Pick<Memory, 'clinic' | 'season'>,
	playerId: string,
	{ basis, season, from, earlier }: Task,
): Promise<Plan> {
	const run = running.begin(playerId)
	try {
		return await planSeason(
			{ ...basis.visit, season: earlier ? keepPast(season, earlier, from) : season },
			{
				protocolFile: clinic.protocol,
				from,
				earlierVisits: basis.earlier,
				settled: {
					assessment: assessmentAsKept(basis, clinic.protocol),
					decisions: basis.decisions,
				},
				signal: run.stop.signal,
				onProgress: (progress) => {
					run.progress = progress
				},
				earlier,
			},
		)
	} catch (error) {
		throw refusalOf(error)
	} finally {
		running.end(playerId)
	}
}
/**
 * Solves in a thread of its own; other calls go on meanwhile. The plan is kept as a record that
 * follows the last; where it is asked first, only once it is taken.
 */
export async function planPlayer(
	memory: Pick<Memory, 'clinic' | 'drafts' | 'people' | 'players' | 'season'>,
	deps: Deps,
	{ playerId, from, ask = false }: InputOf<'season.plan'>,
): Promise<OutputOf<'season.plan'>> {
	const { clinic, people, players } = memory
	const basis = needBasis(memory, deps, playerId)
	checkBasis(basis, clinic.protocol)
	const saved = lastSeason(players, deps, playerId)
	if (!saved) throw new Refusal('season.empty', state('season.empty'))
	if (memory.season.isPlanning(playerId))
		throw new Refusal('season.being-planned', state('season.planned-already'))
	const person = people.acts()
	const before = lastPlan(players, deps, playerId)
	const plan = await solve(memory, playerId, {
		basis,
		season: saved.season,
		from: from ?? firstDay(deps, basis),
		earlier: before?.value.plan,
	})
	if (people.atWork !== person)
		throw new Refusal('season.taken-over', state('season.left-meanwhile'))
	const changes = before ? planDifference(before.value.plan, plan) : []
	const made = { season: saved.record, basis: basisDigest(basis), plan, changes }
	const value = { what: 'plan', playerId, ...made } as const
	const waits = ask && changes.length > 0
	memory.season.takeProposed(playerId)
	if (waits) memory.season.propose(playerId, { value, follows: before?.record, by: person })
	else keepNext(deps, value, before?.record)
	return { plan, changes, first: before === undefined, kept: !waits }
}
/**
 * Keeps the plan that waits.
 * @throws Refusal where none waits, or sessions, pairs, the plan before or the person changed since
 */
export function takePlan(
	memory: Pick<Memory, 'drafts' | 'people' | 'players' | 'season'>,
	deps: Deps,
	{ playerId }: InputOf<'season.take'>,
): OutputOf<'season.take'> {
	const { people, players, season } = memory
	const proposed = season.takeProposed(playerId)
	if (!proposed || proposed.by !== people.acts())
		throw new Refusal('season.nothing-to-take', state('season.nothing-to-take'))
	const { value, follows } = proposed
	const isOld =
		lastSeason(players, deps, playerId)?.record !== value.season ||
		lastPlan(players, deps, playerId)?.record !== follows ||
		basisDigest(needBasis(memory, deps, playerId)) !== value.basis
	if (isOld) throw new Refusal('season.changed-since', state('season.changed-since'))
	keepNext(deps, value, follows)
	return { changes: value.changes }
}
/** Lets the plan that waits go; the one before stands. */
export const leavePlan = (
	{ season }: Pick<Memory, 'season'>,
	{ playerId }: InputOf<'season.leave'>,
): OutputOf<'season.leave'> => ({ left: season.takeProposed(playerId) !== undefined })
/** Stops the solving; nothing is changed. */
export function cancelPlan(
	{ season }: Pick<Memory, 'season'>,
	{ playerId }: InputOf<'season.cancel'>,
): OutputOf<'season.cancel'> {
	const run = season.runOf(playerId)
	run?.stop.abort()
	return { cancelled: run !== undefined }
}
/** How far the solving is. */
export function planProgress(
	{ season }: Pick<Memory, 'season'>,
	{ playerId }: InputOf<'season.progress'>,
): OutputOf<'season.progress'> {
	const run = season.runOf(playerId)
	return run ? { running: true, ...run.progress } : { running: false }
}
