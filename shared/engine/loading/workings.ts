/** The loading room's numbers, each with its formula and this player's values put in. */
import type { Working } from '../findings/finding.ts'
import { equation } from '../findings/formula.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'
import { forceN } from './forces.ts'
import { taskRows } from './tasks.ts'
import { weekWorkings } from './weeks.ts'

const forceWorkings = (massKg: number, protocol: Protocol): Working[] =>
	taskRows.map(({ id, task, low, high }) => ({
		id: `loading.force-${id}`,
		title: `Peak force on one foot: ${task}`,
		lines: [
			`Body mass x gravity x body weights: ${equation(forceN(massKg, low, protocol), 'N', 1)} to ` +
				equation(forceN(massKg, high, protocol), 'N', 1),
			'An order of size, not a measurement',
		],
		basis: protocol.basis(`force: ${task}`, high),
	}))
/** The workings of a visit: forces where a mass is known, and the latest recorded week. */
export function loadingWorkings(visit: Visit, protocol: Protocol): Working[] {
	const { massKg } = bodySize(visit)
	return [
		...(massKg === undefined ? [] : forceWorkings(massKg, protocol)),
		...weekWorkings(visit.play?.weeks ?? [], protocol),
	]
}
