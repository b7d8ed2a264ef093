/**
 * The two passes of the rotation in HiGHS. Blocks the thread it runs in: only the worker and the
 * tests call it.
 */

import type { Highs } from 'highs'
import * as highsModule from 'highs'
import { present } from '../../shared/engine/plain/present.ts'
import { greedyRotation } from '../../shared/engine/season/model/greedy.ts'
import { lpText } from '../../shared/engine/season/model/lp-text.ts'
import { buildModel } from '../../shared/engine/season/model/model.ts'
import { rotationOf, tierValues, valuesOf } from '../../shared/engine/season/model/values.ts'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { StatedError } from '../../shared/engine/words/stated.ts'
import { state } from '../../shared/engine/words/statement.ts'
import type { Progress, Solved } from './solve.ts'

interface Pass {
	values: Map<string, number>
	optimal: boolean
	gap: number
}
type Report = (progress: Progress) => void
/** The solver, made ready: a WebAssembly module, compiled at the first call. */
// the package's types describe its CommonJS build, in which default is one level further in
export const loadHighs = highsModule.default as unknown as typeof highsModule.default.default

/** The column of each variable that the solver knows by name: a pass need not use them all. */
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
function watch(number: 1 | 2, report: Report) {
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
/** Solves the programme of one pass from values that are a plan already. */
function pass(
	highs: Highs,
	{ text, names }: { text: string; names: Iterable<string> },
	number: 1 | 2,
	{ seconds, gap }: { seconds: number; gap: number },
	start: Map<string, number>,
	report: Report,
): Pass {
	const { callbackType, modelStatus } = highs.constants
	return highs.withModel({ format: 'lp', data: text }, (model) => {
		model.options.set({ output_flag: false, time_limit: seconds, mip_rel_gap: gap, random_seed: 1 })
		const columns = columnsOf(names, model)
		const colValue = new Float64Array(model.getDimensions().numCols)
		for (const [name, column] of columns) colValue[column] = start.get(name) ?? 0
		model.setSolution({ colValue })
		model.run({ [callbackType.mipLogging]: watch(number, report) })
		const status = model.getModelStatus()
		if (status !== modelStatus.optimal && status !== modelStatus.timeLimit)
			throw new StatedError(state('season.solver-failed', { status, pass: number }))
		const solution = model.getSolution().colValue
		const reached = Number(model.info.get('mip_gap'))
		// stopped before the solver had a plan or a bound of its own: the start stands, and as no cost
		// is below 0 its gap is at most 1
		if (status === modelStatus.timeLimit && !Number.isFinite(reached))
			return { values: start, optimal: false, gap: 1 }
		return {
			values: new Map(columns.map(([name, column]) => [name, solution[column] ?? 0])),
			optimal: status === modelStatus.optimal,
			gap: Number.isFinite(reached) ? Math.max(0, reached) : 0,
		}
	})
}

/**
 * The best rotation of a problem within the time limit of both passes together.
 * @throws StatedError where the solver could not answer
 */
export function solvePasses(
	highs: Highs,
	problem: SeasonProblem,
	{ timeLimitSeconds, gap }: { timeLimitSeconds: number; gap: number },
	report: Report = () => {},
): Solved {
	const began = performance.now()
	const elapsed = () => (performance.now() - began) / 1000
	const model = buildModel(problem)
	report({ pass: 1, seconds: 0 })
	const start = valuesOf(problem, model, greedyRotation(problem))
	const textOf = (values?: ReadonlyMap<string, number>) => ({
		text: lpText(model, values),
		names: model.variables.keys(),
	})
	const first = pass(highs, textOf(), 1, { seconds: timeLimitSeconds, gap }, start, report)
	let best = first
	const left = timeLimitSeconds - elapsed()
	const evened = first.optimal && left > 0.05
	if (evened) {
		report({ pass: 2, seconds: 0 })
		best = pass(highs, textOf(first.values), 2, { seconds: left, gap }, first.values, report)
	}
	const { tier1, tier2 } = tierValues(model, best.values)
	return {
		status: evened && best.optimal ? 'optimal' : 'time-limit',
		gap: Math.max(first.gap, best.gap),
		rotation: rotationOf(model, best.values),
		objective: tier1 + tier2,
		seconds: elapsed(),
	}
}
