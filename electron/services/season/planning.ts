/** A season planned in a thread of its own, watched and cancelled meanwhile. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { insertDecided } from '../../../shared/engine/report/decided.ts'
import { planDifference } from '../../../shared/engine/season/difference.ts'
import { keepPast } from '../../../shared/engine/season/past.ts'
import type { Plan } from '../../../shared/engine/season/plan-file.ts'
import { dayInWords } from '../../../shared/engine/visit/age.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import { planSeason } from '../../solver/plan.ts'
import { type Progress, SolveCancelled } from '../../solver/solve.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { type Basis, basisDigest, firstDay, needBasis, stopped } from './basis.ts'
import { append, lastPlan, lastSeason } from './records.ts'

interface Run {
	stop: AbortController
	progress: Progress
}
/** Plans being solved, by player; gone with the state they belong to. */
const running = new WeakMap<State, Map<string, Run>>()
function runsOf(state: State): Map<string, Run> {
	const runs = running.get(state) ?? new Map<string, Run>()
	running.set(state, runs)
	return runs
}
/** Whether a plan of this player is being solved. */
export const isPlanning = (state: State, playerId: string): boolean => runsOf(state).has(playerId)

/** @throws Refusal where a warning sign stops the rotation or no pair can be planned */
function checkBasis(basis: Basis, state: State): void {
	const blocked = stopped(basis, state.protocol)
	if (blocked !== undefined) throw new Refusal(blocked)
	if (basis.visit.footwear?.some((pair) => pair.sole !== undefined)) return
	throw new Refusal(
		`No pair with its sole is recorded on ${dayInWords(basis.visit.visitDate)}. Enter the ` +
			'pairs in the assessment, each with its sole, then plan.',
	)
}
/** What went wrong, in words a person can act on; other errors go on as they are. */
function refusalOf(error: unknown): unknown {
	if (error instanceof SolveCancelled) return new Refusal(error.message)
	const told =
		error instanceof Error &&
		/^The (season could not be planned|plan breaks a rule)/.test(error.message)
	return told ? new Refusal(error.message) : error
}
/** What a plan is solved from. */
interface Task {
	basis: Basis
	season: Season
	from: string
	earlier: Plan | undefined
}
/** Solves while the run stands among those of the state. @throws Refusal in words */
async function solve(
	state: State,
	playerId: string,
	{ basis, season, from, earlier }: Task,
): Promise<Plan> {
	const run: Run = { stop: new AbortController(), progress: { pass: 1, seconds: 0 } }
	runsOf(state).set(playerId, run)
	try {
		return await planSeason(
			{ ...basis.visit, season: earlier ? keepPast(season, earlier, from) : season },
			{
				protocolFile: state.protocol,
				from,
				earlierVisits: basis.earlier,
				newInsert: insertDecided(basis.decisions),
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
		runsOf(state).delete(playerId)
	}
}
/**
 * Solves in a thread of its own; other calls go on meanwhile. The plan is kept as a record that
 * follows the last.
 */
export async function planPlayer(
	state: State,
	deps: Deps,
	{ playerId, from }: InputOf<'season.plan'>,
): Promise<OutputOf<'season.plan'>> {
	const basis = needBasis(state, deps, playerId)
	checkBasis(basis, state)
	const saved = lastSeason(state, deps, playerId)
	if (!saved)
		throw new Refusal(
			'The season is empty. Enter its first and last day and its sessions, then plan.',
		)
	if (isPlanning(state, playerId))
		throw new Refusal('This season is being planned already. Wait for it, or cancel it.')
	const person = state.acts()
	const before = lastPlan(state, deps, playerId)
	const plan = await solve(state, playerId, {
		basis,
		season: saved.season,
		from: from ?? firstDay(deps, basis),
		earlier: before?.value.plan,
	})
	if (state.person !== person)
		throw new Refusal(
			'The records were locked or another person took over while the season was planned. ' +
				'Nothing was kept: plan again.',
		)
	const changes = before ? planDifference(before.value.plan, plan) : []
	append(
		deps,
		{ what: 'plan', playerId, season: saved.record, basis: basisDigest(basis), plan, changes },
		before?.record,
	)
	return { plan, changes, first: before === undefined }
}
/** Stops the solving; nothing is changed. */
export function cancelPlan(
	state: State,
	{ playerId }: InputOf<'season.cancel'>,
): OutputOf<'season.cancel'> {
	const run = runsOf(state).get(playerId)
	run?.stop.abort()
	return { cancelled: run !== undefined }
}
/** How far the solving is. */
export function planProgress(
	state: State,
	{ playerId }: InputOf<'season.progress'>,
): OutputOf<'season.progress'> {
	const run = runsOf(state).get(playerId)
	return run ? { running: true, ...run.progress } : { running: false }
}
