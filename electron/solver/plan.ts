/** A visit to its Plan: assess, build, solve in the worker, verify, write down. */
import { assess } from '../../shared/engine/assess.ts'
import type { Assessment, KeptAssessment } from '../../shared/engine/findings/assessment.ts'
import { insertDecided } from '../../shared/engine/prescription/insert-before.ts'
import { type SettledPlan, settledPlan } from '../../shared/engine/prescription/settled.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import {
	openProtocol,
	type ProtocolFile,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { heldPlan } from '../../shared/engine/season/plan/held-plan.ts'
import { composePlan } from '../../shared/engine/season/plan/plan.ts'
import type { Plan } from '../../shared/engine/season/plan-file.ts'
import { type Built, buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { EarlierPlan } from '../../shared/engine/season/problem/earlier.ts'
import { heldSeason, startsInsert } from '../../shared/engine/season/problem/prescribed.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { rounded } from '../../shared/engine/visit/sides.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { type Solved, type SolveOptions, solveSeason } from './solve.ts'

interface PlanOptions extends SolveOptions {
	protocolFile?: ProtocolFile
	/** sessions before this date are the past; the day of the visit unless given */
	from?: string
	/** the plan so far: what it said of the past stands */
	earlier?: EarlierPlan
	earlierVisits?: readonly Visit[]
	/**
	 * The assessment that a record keeps, and what was decided about it; a fresh one, of which nothing
	 * is decided, unless given.
	 */
	settled?: { assessment: KeptAssessment; decisions: Decisions }
}
/** The settled plan of the visit; undefined for a record of before 0.4, which has none. */
function planOf(assessment: Assessment, { settled }: PlanOptions): SettledPlan | undefined {
	if (!settled) return settledPlan(assessment, noDecisions)
	const { assessment: kept, decisions } = settled
	return kept.prescription ? settledPlan(kept, decisions) : undefined
}
/** What was decided element by element: a raise or an insert. */
const startedByElement = ({ settled }: PlanOptions): boolean =>
	settled !== undefined && insertDecided(settled.decisions)
/** A season ready to be solved, and how its plan is written down; a held one has its plan already. */
type Prepared =
	| { held: Plan }
	| { held?: never; built: Built; planOf: (solved: Omit<Solved, 'seconds'>) => Plan }
/** Everything of a plan but the solving. @throws StatedError where no plan could be made @internal */
export function prepareSeason(visit: Visit, options: PlanOptions = {}): Prepared {
	const protocolFile = options.protocolFile ?? shippedProtocol
	const protocol = openProtocol(protocolFile)
	const assessment = assess(visit, options.earlierVisits ?? [], protocolFile)
	const plan = planOf(assessment, options)
	const from = options.from ?? visit.visitDate
	const held = plan && heldSeason(plan)
	if (held) return { held: heldPlan(visit, from, held) }
	const built = buildProblem({
		visit,
		protocol,
		suitability,
		from,
		judged: assessment.prescription.owned,
		newInsert: (plan !== undefined && startsInsert(plan)) || startedByElement(options),
		plan,
		earlier: options.earlier,
	})
	return {
		built,
		planOf: ({ rotation, status, gap, levels }) =>
			composePlan({
				visit,
				assessment,
				protocol,
				suitability,
				built,
				rotation,
				status,
				gap,
				levels: levels.map((each) => ({
					...each,
					reached: rounded(each.reached, 4),
					gap: rounded(each.gap, 6),
				})),
				from,
			}),
	}
}
/** @throws SolveCancelled when stopped; StatedError where no plan could be made */
export async function planSeason(visit: Visit, options: PlanOptions = {}): Promise<Plan> {
	const prepared = prepareSeason(visit, options)
	if (prepared.held) return prepared.held
	return prepared.planOf(await solveSeason(prepared.built.problem, options))
}
