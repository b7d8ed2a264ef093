/** The order of size of the forces on one foot, in newtons; none without a body mass. */
import type { LoadingResult, TaskForce } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'
import { taskRows } from './tasks.ts'

const gravity = 9.81

/** Peak forces by task for a body mass in kg. */
export const peakForces = (massKg: number, protocol: Protocol): TaskForce[] =>
	taskRows.map(({ task, low, high }) => ({
		task,
		lowN: massKg * gravity * protocol.value(low),
		highN: massKg * gravity * protocol.value(high),
		basis: protocol.basis(`force: ${task}`, high),
	}))
/** Peak force of a sidestep for a body mass in kg. */
export const sidestepForce = (
	massKg: number,
	protocol: Protocol,
): NonNullable<LoadingResult['peakForceN']> => ({
	task: 'sidestep',
	lowN: massKg * gravity * protocol.value('loading.sidestepLowBw'),
	highN: massKg * gravity * protocol.value('loading.sidestepHighBw'),
})
/** The force of a sidestep as it is read. */
export function forceFinding(massKg: number, protocol: Protocol): Finding {
	const { lowN, highN } = sidestepForce(massKg, protocol)
	return loadingFinding(
		state('loading.force', { lowN: rounded(lowN, 0), highN: rounded(highN, 0) }),
		'note',
		[{ measure: 'massKg', value: massKg, unit: 'kg' }],
		protocol.basis('force of a sidestep', 'loading.sidestepHighBw'),
	)
}
