/** A visit to its Plan: assess, build, solve in the worker, verify, write down. */
import { assess } from '../../shared/engine/assess.ts'
import { suitability } from '../../shared/engine/protocol/norms/suitability.ts'
import {
	openProtocol,
	type ProtocolFile,
	shippedProtocol,
} from '../../shared/engine/protocol/protocol.ts'
import { composePlan } from '../../shared/engine/season/plan/plan.ts'
import type { Plan } from '../../shared/engine/season/plan-file.ts'
import { buildProblem } from '../../shared/engine/season/problem/build.ts'
import type { EarlierPlan } from '../../shared/engine/season/problem/earlier.ts'
import { rounded } from '../../shared/engine/visit/sides.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { type SolveOptions, solveSeason } from './solve.ts'

interface PlanOptions extends SolveOptions {
	protocolFile?: ProtocolFile
	/** sessions before this date are the past; the day of the visit unless given */
	from?: string
	/** the plan so far: what it said of the past stands */
	earlier?: EarlierPlan
	earlierVisits?: readonly Visit[]
	/** an insert is started together with the new pairs */
	newInsert?: boolean
}
/** @throws SolveCancelled when stopped; StatedError where no plan could be made */
export async function planSeason(visit: Visit, options: PlanOptions = {}): Promise<Plan> {
	const protocolFile = options.protocolFile ?? shippedProtocol
	const protocol = openProtocol(protocolFile)
	const assessment = assess(visit, options.earlierVisits ?? [], protocolFile)
	const outgrown = assessment.footwear.current
		.filter(
			(pair) =>
				pair.verdict === 'replace' &&
				pair.toeRoomMm !== undefined &&
				pair.toeRoomMm < protocol.value('footwear.youthReplaceMm'),
		)
		.map((pair) => pair.id)
	const from = options.from ?? visit.visitDate
	const built = buildProblem({
		visit,
		protocol,
		suitability,
		from,
		outgrown,
		newInsert: options.newInsert,
		earlier: options.earlier,
	})
	const solved = await solveSeason(built.problem, options)
	return composePlan({
		visit,
		assessment,
		protocol,
		suitability,
		built,
		rotation: solved.rotation,
		status: solved.status,
		gap: solved.gap,
		levels: solved.levels.map((each) => ({
			...each,
			reached: rounded(each.reached, 4),
			gap: rounded(each.gap, 6),
		})),
		from,
	})
}
