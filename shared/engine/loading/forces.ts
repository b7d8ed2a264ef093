/** The order of size of the forces on one foot, in newtons; none without a body mass. */
import type { LoadingResult, TaskForce } from '../findings/assessment.ts'
import { type Finding, reading } from '../findings/finding.ts'
import { exactly, type Formula, quantity, times } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'
import { sidestep, type TaskRow, taskRows } from './tasks.ts'

const gravity = 9.81

/** A force in body weights as newtons, for a body mass in kg. */
export const forceN = (massKg: number, key: ThresholdKey, protocol: Protocol): Formula =>
	times(quantity(massKg, 1), exactly(gravity), exactly(protocol.value(key)))
const spanOf = (massKg: number, { low, high }: TaskRow, protocol: Protocol) => ({
	lowN: forceN(massKg, low, protocol).value,
	highN: forceN(massKg, high, protocol).value,
})
/** Peak forces by task for a body mass in kg. */
export const peakForces = (massKg: number, protocol: Protocol): TaskForce[] =>
	taskRows.map((row) => ({
		task: row.task,
		...spanOf(massKg, row, protocol),
		basis: protocol.basis(`force: ${row.task}`, row.high),
	}))
/** Peak force of a sidestep for a body mass in kg. */
export const sidestepForce = (
	massKg: number,
	protocol: Protocol,
): NonNullable<LoadingResult['peakForceN']> => ({
	task: sidestep.task,
	...spanOf(massKg, sidestep, protocol),
})
/** The force of a sidestep as it is read. */
export function forceFinding(massKg: number, protocol: Protocol): Finding {
	const { lowN, highN } = sidestepForce(massKg, protocol)
	return loadingFinding(
		state('loading.force', { lowN: rounded(lowN, 0), highN: rounded(highN, 0) }),
		'note',
		[reading('massKg', massKg, 'kg')],
		protocol.basis('force of a sidestep', sidestep.high),
	)
}
