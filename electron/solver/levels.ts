/**
 * The levels of the rotation in HiGHS, one after another: each is made as good as it can be, and
 * kept while the next is solved. Blocks the thread it runs in: only the worker and the tests call it.
 */

import type { Highs } from 'highs'
import * as highsModule from 'highs'
import { present } from '../../shared/engine/plain/present.ts'
import { greedyRotation } from '../../shared/engine/season/model/greedy.ts'
import { lpText } from '../../shared/engine/season/model/lp-text.ts'
import { buildModel } from '../../shared/engine/season/model/model.ts'
import type { Model } from '../../shared/engine/season/model/programme.ts'
import { reachedOn, rotationOf, valuesOf } from '../../shared/engine/season/model/values.ts'
import { type Level, levels } from '../../shared/engine/season/problem/levels.ts'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import type { Progress, Reached, Solved } from './solve.ts'

type Values = ReadonlyMap<string, number>
interface Answer {
	values: Values
	proven: boolean
	gap: number
}
type Report = (progress: Progress) => void
/** The solver, made ready: a WebAssembly module, compiled at the first call. */
// the package's types describe its CommonJS build, in which default is one level further in
export const loadHighs = highsModule.default as unknown as typeof highsModule.default.default

/** The column of each variable that the solver knows by name: a level need not use them all. */
const columnsOf = (
	names: Iterable<string>,
	model: { getColByName(name: string): number },
): (readonly [string, number])[] =>
	[...names].flatMap((name) => {
		try {
			return [[name, model.getColByName(name)] as const]
		} catch {
			return []
		}
	})
/** Reports how far the solver is, at most every tenth of a second. */
function watch(number: number, report: Report) {
	let last = 0
	return (event: { data: { mip_gap?: number; running_time?: number } }) => {
		const { running_time: seconds = 0, mip_gap: gap } = event.data
		if (seconds - last < 0.1) return undefined
		last = seconds
		const reached = gap !== undefined && Number.isFinite(gap) ? gap : undefined
		report(present({ pass: number, seconds, gap: reached }))
		return undefined
	}
}
/** Solves the programme of one level from values that are a plan already. */
function answerOf(
	highs: Highs,
	{ text, names }: { text: string; names: Iterable<string> },
	number: number,
	{ seconds, gap }: { seconds: number; gap: number },
	start: Values,
	report: Report,
): Answer {
	const { callbackType, modelStatus } = highs.constants
	return highs.withModel({ format: 'lp', data: text }, (model) => {
		model.options.set({ output_flag: false, time_limit: seconds, mip_rel_gap: gap, random_seed: 1 })
		const columns = columnsOf(names, model)
		const colValue = new Float64Array(model.getDimensions().numCols)
		for (const [name, column] of columns) colValue[column] = start.get(name) ?? 0
		model.setSolution({ colValue })
		model.run({ [callbackType.mipLogging]: watch(number, report) })
		const status = model.getModelStatus()
		// a level that the solver cannot answer leaves what stands, which is sound: it is not proven
		if (status !== modelStatus.optimal && status !== modelStatus.timeLimit)
			return { values: start, proven: false, gap: 1 }
		const solution = model.getSolution().colValue
		const reached = Number(model.info.get('mip_gap'))
		// stopped before the solver had a plan or a bound of its own: the start stands, and as no cost
		// is below 0 its gap is at most 1
		if (status === modelStatus.timeLimit && !Number.isFinite(reached))
			return { values: start, proven: false, gap: 1 }
		return {
			values: new Map(columns.map(([name, column]) => [name, solution[column] ?? 0])),
			proven: status === modelStatus.optimal,
			gap: Number.isFinite(reached) ? Math.max(0, reached) : 0,
		}
	})
}
/** A level that takes longer leaves at least the other part of the time to those after it. */
const mostOfTheTime = 0.6
const least = 1e-9
/** What the levels before left: values that stand, what each of them keeps. */
interface Standing {
	values: Values
	kept: Map<Level, number>
}
interface Limits {
	/** left for this level and all after it */
	seconds: number
	gap: number
}
/** Solves one level, unless nothing can be better than what stands or there is no time left. */
function settle(
	highs: Highs,
	model: Model,
	level: Level,
	{ values, kept }: Standing,
	{ seconds, gap }: Limits,
	report: Report,
): Answer {
	// no term is below 0
	if (reachedOn(level, model, values) <= least) return { values, proven: true, gap: 0 }
	if (seconds < 0.05) return { values, proven: false, gap: 1 }
	const number = levels.indexOf(level) + 1
	report({ pass: number, seconds: 0 })
	const share = level === levels.at(-1) ? 1 : mostOfTheTime
	return answerOf(
		highs,
		{ text: lpText(model, level, kept), names: model.variables.keys() },
		number,
		{ seconds: share * seconds, gap },
		values,
		report,
	)
}

/**
 * The best rotation of a problem, level by level, within the time limit of all together.
 */
export function solveLevels(
	highs: Highs,
	problem: SeasonProblem,
	{ timeLimitSeconds, gap }: { timeLimitSeconds: number; gap: number },
	report: Report = () => {},
): Solved {
	const began = performance.now()
	const elapsed = () => (performance.now() - began) / 1000
	const model = buildModel(problem)
	report({ pass: 1, seconds: 0 })
	let values: Values = valuesOf(problem, model, greedyRotation(problem))
	const kept = new Map<Level, number>()
	const reached: Reached[] = []
	for (const level of levels) {
		const limits = { seconds: timeLimitSeconds - elapsed(), gap }
		const answer = settle(highs, model, level, { values, kept }, limits, report)
		values = answer.values
		kept.set(level, reachedOn(level, model, values))
		reached.push({
			level,
			reached: reachedOn(level, model, values),
			proven: answer.proven,
			gap: answer.gap,
		})
	}
	return {
		status: reached.every(({ proven }) => proven) ? 'optimal' : 'time-limit',
		gap: Math.max(...reached.map((each) => each.gap)),
		rotation: rotationOf(model, values),
		levels: reached,
		seconds: elapsed(),
	}
}
