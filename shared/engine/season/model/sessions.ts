/** Each session is worn in a pair or counts as without: rows of whole and of shared sessions. */
import { present } from '../../plain/present.ts'
import type { SeasonProblem } from '../problem/problem.ts'
import type { ModelSession } from './choices.ts'
import type { Model, Term } from './programme.ts'
import { declare, nameOf } from './variables.ts'

const without = (session: ModelSession): string => nameOf({ is: 'without', slot: session.index })
const wornOnce = (session: ModelSession): Term[] => session.able.map((cell): Term => [1, cell.worn])

/** One pair for the whole session, or none. */
function coverWhole(model: Model, session: ModelSession): void {
	model.rows.push({
		name: `a${session.index}`,
		terms: [...wornOnce(session), [1, without(session)]],
		sense: '=',
		right: 1,
	})
}
/** Parts that fill the session; a second pair costs a change of boots. */
function coverShared(model: Model, session: ModelSession, problem: SeasonProblem): void {
	const { index, openMinutes, able } = session
	model.rows.push({
		name: `a${index}`,
		terms: [...able.map((cell): Term => [1, cell.part]), [openMinutes, without(session)]],
		sense: '=',
		right: openMinutes,
	})
	for (const { pair, part, worn } of able)
		model.rows.push({
			name: `b${index}_${pair}`,
			terms: [
				[1, part],
				[-openMinutes, worn],
			],
			sense: '<=',
			right: 0,
		})
	// a pair counts as worn only with some time in it, and boots are not changed for a few minutes
	const least = Math.max(1, Math.min(problem.shortestPartMinutes, openMinutes))
	for (const { pair, part, worn } of able)
		model.rows.push({
			name: `n${index}_${pair}`,
			terms: [
				[1, part],
				[-least, worn],
			],
			sense: '>=',
			right: 0,
		})
	const change = declare(model, { is: 'change', slot: index })
	model.bounds.push(change)
	model.rows.push({
		name: `t${index}`,
		terms: [...wornOnce(session), [-1, change]],
		sense: '<=',
		right: 1,
	})
	model.goals.changes.push([problem.weights.change, change])
}
/** A pair that is wished for in a session is worn there, or the miss counts. */
function wishWorn(
	model: Model,
	{ able, index: slot }: ModelSession,
	pair: number | undefined,
	{ is, row, goal }: { is: 'pin-missed' | 'told-missed'; row: string; goal: 'pins' | 'told' },
): void {
	const wished = able.find((cell) => cell.pair === pair)
	if (!wished) return
	const miss = declare(model, { is, slot })
	model.bounds.push(miss)
	model.rows.push({
		name: `${row}${slot}`,
		terms: [
			[1, wished.worn],
			[1, miss],
		],
		sense: '>=',
		right: 1,
	})
	model.goals[goal].push([1, miss])
}
/** The variables of a session: without a pair, in each pair, and for how long where it is shared. */
function declareChoices(model: Model, { index: slot, slot: { split }, able }: ModelSession): void {
	model.binaries.push(
		declare(model, { is: 'without', slot }),
		...able.map(({ pair }) => declare(model, { is: 'worn', slot, pair })),
	)
	if (split) for (const { pair } of able) declare(model, { is: 'part', slot, pair })
}
/** Rows, goals and variables of every session that is still open. */
export function coverSessions(
	model: Model,
	sessions: readonly ModelSession[],
	problem: SeasonProblem,
): void {
	for (const session of sessions) {
		const { index, slot, openMinutes, able } = session
		if (openMinutes <= 0) continue
		declareChoices(model, session)
		model.goals[session.slot.kind === 'match' ? 'matches' : 'trainings'].push([1, without(session)])
		if (slot.split) coverShared(model, session, problem)
		else coverWhole(model, session)
		for (const { points, minutes, worn, part, pair } of able) {
			for (const [factor, variable] of minutes)
				model.goals.suited.push([(points / 60) * factor, variable])
			model.uses.push(
				present({
					name: worn,
					slot: index,
					pair,
					minutes: openMinutes,
					part: slot.split ? part : undefined,
				}),
			)
		}
		wishWorn(model, session, slot.pin, { is: 'pin-missed', row: 'p', goal: 'pins' })
		wishWorn(model, session, slot.told, { is: 'told-missed', row: 'v', goal: 'told' })
	}
}
