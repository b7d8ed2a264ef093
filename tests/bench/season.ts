/**
 * A season's rotation in its worker, while this thread stays free: 40 weeks x 5 sessions x 4 pairs
 * with each level timed, beside HiGHS alone on the same programmes; and 12 pairs x 120 sessions
 * within their time. Times are those of the processor, so that other work on the PC does not count:
 * the solver has one thread, and on a free PC the clock says the same.
 */
import { loadHighs } from '../../electron/solver/levels.ts'
import { type Solved, solveSeason } from '../../electron/solver/solve.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { lpText } from '../../shared/engine/season/model/lp-text.ts'
import { buildModel } from '../../shared/engine/season/model/model.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import { type Level, levels } from '../../shared/engine/season/problem/levels.ts'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { verify } from '../../shared/engine/season/verify/verify.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { bigSeason, wideSeason } from '../engine/random-season.ts'

interface Line {
	name: string
	value: number
	unit: string
	limit: number
}
const problemOf = (visit: Visit): SeasonProblem =>
	buildProblem({ visit, protocol: openProtocol(), suitability }).problem
/** The levels that decide whether a player plays: matches, pins, trainings. */
const firstLevels = 3

/** Seconds that all threads of this process took of the processor. */
function processorSeconds(): number {
	const { user, system } = process.cpuUsage()
	return (user + system) / 1e6
}
function threadMs(): number {
	const { user, system } = process.threadCpuUsage()
	return (user + system) / 1e3
}
interface Run {
	solved: Solved
	/** with the start of the thread and the compiling of the solver */
	seconds: number
	/** until the first three levels were done */
	firstSeconds: number
	/** of each level, in their order; 0 where nothing was left to solve */
	levelSeconds: number[]
	/** of the calling thread: it can never have kept the window waiting longer */
	callerMs: number
}
async function solvedIn(problem: SeasonProblem, timeLimitSeconds: number): Promise<Run> {
	const [began, beganMs] = [processorSeconds(), threadMs()]
	const since = () => processorSeconds() - began
	const starts: { pass: number; seconds: number }[] = []
	const solved = await solveSeason(problem, {
		timeLimitSeconds,
		onProgress: ({ pass }) => {
			if (starts.at(-1)?.pass !== pass) starts.push({ pass, seconds: since() })
		},
	})
	const seconds = since()
	const callerMs = threadMs() - beganMs
	const { problems } = verify(problem, solved.rotation)
	if (problems.length > 0) throw new Error('the verifier refused a plan')
	const endOf = (place: number) => starts[place + 1]?.seconds ?? seconds
	return {
		solved,
		seconds,
		firstSeconds: starts.find(({ pass }) => pass > firstLevels)?.seconds ?? seconds,
		levelSeconds: levels.map((_, level) => {
			const place = starts.findIndex(({ pass }) => pass === level + 1)
			return place < 0 ? 0 : endOf(place) - starts[place]!.seconds
		}),
		callerMs,
	}
}
/** HiGHS alone on the same programmes, one after another, without a plan to start from. */
async function bareSeconds(problem: SeasonProblem): Promise<number> {
	const highs = await loadHighs()
	const model = buildModel(problem)
	const reached = new Map<Level, number>()
	const began = processorSeconds()
	for (const level of levels) {
		const { ObjectiveValue } = highs.solve(lpText(model, level, reached), {
			output_flag: false,
			mip_rel_gap: 0.001,
			random_seed: 1,
			time_limit: 30,
		})
		reached.set(level, model.goals[level].length > 0 ? ObjectiveValue : 0)
	}
	return processorSeconds() - began
}
const most = (values: readonly number[]): number => Math.max(...values)

export async function seasonBench(): Promise<Line[]> {
	const runs: Run[] = []
	const bare: number[] = []
	for (const seed of [1, 2, 3]) {
		const problem = problemOf(bigSeason(seed))
		runs.push(await solvedIn(problem, 30))
		bare.push(await bareSeconds(problem))
	}
	const wide = await solvedIn(problemOf(wideSeason(1)), 10)
	const none = Number.POSITIVE_INFINITY
	return [
		{
			name: 'season 40 x 5 x 4, first three levels proven, slowest of 3',
			value: most(runs.map(({ firstSeconds }) => firstSeconds)),
			unit: 's',
			limit: 3,
		},
		{
			name: 'season 40 x 5 x 4, all levels proven, slowest of 3',
			value: most(runs.map(({ seconds }) => seconds)),
			unit: 's',
			limit: 6,
		},
		...levels.map((level, place) => ({
			name: `season, level ${level}, slowest of 3`,
			value: most(runs.map(({ levelSeconds }) => levelSeconds[place] ?? 0)),
			unit: 's',
			limit: none,
		})),
		{
			name: 'season, HiGHS alone on the same programmes, slowest of 3',
			value: most(bare),
			unit: 's',
			limit: none,
		},
		{
			name: 'season, time beside HiGHS alone, largest of 3',
			value: most(runs.map(({ seconds }, place) => seconds / (bare[place] ?? 1))),
			unit: 'of its time',
			limit: 2,
		},
		{
			name: 'season, largest gap of a level',
			value: most(runs.map(({ solved }) => solved.gap)),
			unit: 'of the level',
			limit: 0.001,
		},
		{
			name: 'season, all that the calling thread does meanwhile',
			value: most([...runs, wide].map(({ callerMs }) => callerMs)),
			unit: 'ms',
			limit: 100,
		},
		{
			name: 'season of 12 pairs x 120 sessions, by the clock, told to end within 10 s',
			value: wide.solved.seconds,
			unit: 's',
			limit: 11,
		},
		...wide.solved.levels.map(({ level, gap, proven }) => ({
			name: `season of 12 pairs, gap of level ${level}${proven ? ', proven' : ''}`,
			value: gap,
			unit: 'of the level',
			limit: 1,
		})),
	]
}
