/** Whether a field of the visit is a test under load, and of which limbs. */
import { loadTests } from './load-tests.table.ts'
import { bothSides } from './sides.ts'
import type { Side, Visit } from './visit.ts'

const sideIn = (path: string): Side | undefined =>
	bothSides.find((side) => path.includes(`.${side}.`))
const withoutSide = (path: string): string => path.replace(/\.(left|right)\./, '.')
const isLoadTest = (path: string): boolean => loadTests.includes(withoutSide(path))

/** The side that a group of warning-sign questions was opened for. */
function sideOfGroup({ screening }: Pick<Visit, 'screening'>, path: string): unknown {
	const [, name = ''] = path.split('.')
	const group = (screening as Readonly<Record<string, unknown>> | undefined)?.[name]
	return typeof group === 'object' && group !== null && 'side' in group ? group.side : undefined
}
/**
 * The limbs that a field loads: one, both where its group of questions is of both, none where the
 * field is no test or its group names no side yet.
 */
export function limbsTested(path: string, visit: Pick<Visit, 'screening'>): readonly Side[] {
	if (!isLoadTest(path)) return []
	const side = sideIn(path)
	if (side !== undefined) return [side]
	const group = sideOfGroup(visit, path)
	return bothSides.filter((limb) => group === limb || group === 'both')
}
