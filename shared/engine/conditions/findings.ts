/** What is said of the recorded conditions themselves, whatever room reads them. */

import { isHeld } from '../facts/held.ts'
import { type Finding, type FindingSide, findingOf } from '../findings/finding.ts'
import type { Gate } from '../findings/gate.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { type Condition, conditions } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { ageDoubt } from './ages.ts'
import {
	conditionReading,
	type RecordedCondition,
	recordedConditions,
	unclearedSurgery,
} from './query.ts'
import { conditionRow } from './registry.ts'

/** One finding speaks for a condition that is recorded twice: its side covers them all. */
function sideOf(recorded: readonly RecordedCondition[]): FindingSide {
	const sides = new Set(recorded.map(({ side }) => side))
	const [only = 'none', another] = sides
	if (another === undefined) return only
	return sides.has('left') || sides.has('right') || sides.has('both') ? 'both' : 'none'
}
/** Past ones are of another age. */
function ageFindings(visit: Visit, condition: Condition, protocol: Protocol): Finding[] {
	const recorded = recordedConditions(visit, [condition])
	const years = ageYears(visit.player.birthDate, visit.visitDate)
	const doubt = ageDoubt(condition, years, protocol)
	if (!doubt || recorded.length === 0) return []
	const { passed, ...span } = doubt
	return [
		findingOf(state('conditions.unusual-age', { condition, ageYears: years, ...span }), {
			side: sideOf(recorded),
			level: 'note',
			of: condition,
			because: recorded.map(conditionReading),
			basis: protocol.basis('usual ages of a condition', passed),
		}),
	]
}
function cautionFindings(visit: Visit, condition: Condition): Finding[] {
	const { caution } = conditionRow(condition)
	if (!caution) return []
	const { when, source, strength } = caution
	const recorded = recordedConditions(visit, [condition], { when })
	if (recorded.length === 0) return []
	return [
		findingOf(state('conditions.caution', { condition }), {
			side: sideOf(recorded),
			level: 'caution',
			of: condition,
			because: recorded.map(conditionReading),
			basis: { rule: 'recorded conditions', source, strength },
		}),
	]
}
function surgeryFindings(visit: Visit): Finding[] {
	const uncleared = unclearedSurgery(visit)
	if (uncleared.length === 0) return []
	const operations = uncleared.map(({ side, operation, operationDate }) =>
		present({ side, operation, operationDate }),
	)
	return [
		findingOf(state('conditions.surgery-clearance', { operations }), {
			side: sideOf(uncleared),
			level: 'caution',
			because: uncleared.map(conditionReading),
			basis: {
				rule: 'return after surgery',
				source: 'common practice, no source',
				strength: 'practice',
			},
		}),
	]
}
function unnamedFindings(visit: Visit): Finding[] {
	const unnamed = recordedConditions(visit, ['other-condition'], { when: 'ever' }).filter(
		({ inWords }) => inWords === undefined,
	)
	if (unnamed.length === 0) return []
	return [
		findingOf(state('conditions.unnamed', { times: unnamed.length }), {
			side: sideOf(unnamed),
			level: 'note',
			because: unnamed.map(conditionReading),
			basis: {
				rule: 'recorded conditions',
				source: 'what is recorded without words says nothing to the next reader',
				strength: 'practice',
			},
		}),
	]
}
/** Its exercise is held: on its side, or on either where it has none. */
const isExerciseHeld = ({ side }: RecordedCondition, gate: Gate): boolean =>
	side === 'left' || side === 'right' ? isHeld(gate, 'exercise', side) : isHeld(gate, 'exercise')
/**
 * One note for all of them; which exercise, and how much, is the clinician's choice. Silent on a
 * limb whose exercise is held: a tendon that may be torn is not loaded.
 */
function exerciseFindings(visit: Visit, gate: Gate): Finding[] {
	const rows = conditions.flatMap((condition) => {
		const { exercises = [] } = conditionRow(condition)
		const recorded = recordedConditions(visit, [condition]).filter(
			(one) => !isExerciseHeld(one, gate),
		)
		return exercises.length > 0 && recorded.length > 0 ? [{ condition, exercises, recorded }] : []
	})
	if (rows.length === 0) return []
	return [
		findingOf(
			state('conditions.exercises', {
				rows: rows.map(({ condition, exercises }) => ({ condition, exercises })),
			}),
			{
				side: 'none',
				level: 'note',
				because: rows.flatMap(({ recorded }) => recorded.map(conditionReading)),
				basis: {
					rule: 'exercise for a condition',
					source: 'common practice, no source',
					strength: 'practice',
				},
			},
		),
	]
}
/** @param gate what is held; @returns cautions first, in the order of the table */
export const conditionFindings = (visit: Visit, gate: Gate, protocol: Protocol): Finding[] => [
	...surgeryFindings(visit),
	...conditions.flatMap((condition) => cautionFindings(visit, condition)),
	...conditions.flatMap((condition) => ageFindings(visit, condition, protocol)),
	...unnamedFindings(visit),
	...exerciseFindings(visit, gate),
]
