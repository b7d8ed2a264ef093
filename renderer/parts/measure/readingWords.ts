/** What is told under a number: the mean of its repeats, and how it was at the last visit. Pure. */
import type { FieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { meanOf, rounded } from '../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { readPath } from '../draft-path.ts'
import { unitShown } from '../units.ts'

type Reading = number | number[] | undefined
/** The six items of the foot posture index are no repeats of each other. */
const repeats = (path: string, { kind }: FieldMeta): boolean =>
	kind === 'number' && !path.endsWith('fpi6')
const signed = (value: number): string => `${value > 0 ? '+' : ''}${value}`

export function meanWords(path: string, meta: FieldMeta, visit: Visit): string {
	const value = readPath(visit, path)
	if (!repeats(path, meta) || !Array.isArray(value) || value.length < 2) return ''
	const mean = meanOf(value as number[])
	return mean === undefined ? '' : `mean ${rounded(mean, 1)} ${unitShown(meta.unit)}`.trim()
}
/** @param before the value of the last visit that has the measure */
export function lastVisitWords(
	path: string,
	meta: FieldMeta,
	visit: Visit,
	before: unknown,
): string {
	const last = repeats(path, meta) ? meanOf(before as Reading) : undefined
	if (last === undefined) return ''
	const now = meanOf(readPath(visit, path) as Reading)
	const step =
		now === undefined ? '' : `, ${signed(rounded(now - last, 1))} ${unitShown(meta.unit)}`.trimEnd()
	return `last visit ${rounded(last, 1)}${step}`
}
