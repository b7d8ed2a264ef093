/**
 * The one question about recorded conditions. One whose status was not said yet counts nowhere, so
 * that nothing follows from a name that was only looked up. Recorded without a side, a condition of a limb may be
 * of either: it counts on both sides, so that nothing dangerous is missed.
 */
import type { Because } from '../protocol/basis.ts'
import type { Condition } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'

/** As it stands on the screen: its status may not be said yet. */
export type EnteredCondition = NonNullable<Visit['conditions']>[number]
export type RecordedCondition = EnteredCondition & {
	status: NonNullable<EnteredCondition['status']>
}
const isSaid = (entered: EnteredCondition): entered is RecordedCondition =>
	entered.status !== undefined
interface Where {
	/** On this side, on both, or recorded without a side; left out: on whatever side. */
	side?: Side
	/** current only; now: current or recovering (the usual); ever: past ones too. */
	when?: 'current' | 'now' | 'ever'
}
const isOn = ({ side: recorded }: RecordedCondition, side: Side | undefined): boolean =>
	side === undefined || recorded === side || recorded === 'both' || recorded === 'none'
const isAt: Record<NonNullable<Where['when']>, (condition: RecordedCondition) => boolean> = {
	current: ({ status }) => status === 'current',
	now: ({ status }) => status !== 'past',
	ever: () => true,
}
/** Those whose status was said, in the order in which they were entered. */
export const saidConditions = ({
	conditions = [],
}: Pick<Visit, 'conditions'>): RecordedCondition[] => conditions.filter(isSaid)
/** The recorded conditions that are among the wanted ones, there and then. */
export const recordedConditions = (
	visit: Pick<Visit, 'conditions'>,
	wanted: readonly Condition[],
	{ side, when = 'now' }: Where = {},
): RecordedCondition[] =>
	saidConditions(visit).filter(
		(recorded) =>
			wanted.includes(recorded.condition) && isOn(recorded, side) && isAt[when](recorded),
	)
/** Whether one of the wanted conditions is recorded, there and then. */
export const hasCondition = (
	visit: Pick<Visit, 'conditions'>,
	wanted: readonly Condition[],
	where: Where = {},
): boolean => recordedConditions(visit, wanted, where).length > 0
/** A recorded condition as a reason: what it is, where, and whether it is current. */
export const conditionReading = ({ condition, side, status }: RecordedCondition): Because =>
	side === 'none'
		? { measure: condition, value: status }
		: { measure: condition, side, value: status }
/** The wanted conditions as reasons; none where none is recorded. */
export const conditionReasons = (
	visit: Pick<Visit, 'conditions'>,
	wanted: readonly Condition[],
	where: Where = {},
): Because[] => recordedConditions(visit, wanted, where).map(conditionReading)
/**
 * Operations before the surgeon's word that the limb may be loaded is recorded; long past ones only
 * where that word was no. Common practice, no source.
 */
export const unclearedSurgery = (
	visit: Pick<Visit, 'conditions'>,
	{ side }: Pick<Where, 'side'> = {},
): RecordedCondition[] =>
	recordedConditions(visit, ['foot-or-ankle-surgery'], {
		when: 'ever',
		...(side === undefined ? {} : { side }),
	}).filter(
		({ status, clearedBySurgeon }) =>
			clearedBySurgeon === false || (clearedBySurgeon === undefined && status !== 'past'),
	)
