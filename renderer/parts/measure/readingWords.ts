/**
 * What is told under a number, in the unit of its row: the mean of its repeats, and how it was at
 * the last visit. Pure.
 */
import type { FieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { meanOf, rounded } from '../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { readPath } from '../draft-path.ts'

type Reading = number | number[] | undefined
/** Items that are added up are no repeats of each other. */
const repeats = ({ kind, items }: FieldMeta): boolean => kind === 'number' && items === 0
const signed = (value: number): string => `${value > 0 ? '+' : ''}${value}`

export function meanWords(path: string, meta: FieldMeta, visit: Visit): string {
	const value = readPath(visit, path)
	if (!repeats(meta) || !Array.isArray(value) || value.length < 2) return ''
	const mean = meanOf(value as number[])
	return mean === undefined ? '' : `mean ${rounded(mean, 1)}`
}
/** @param before the value of the last visit that has the measure */
export function lastVisitWords(
	path: string,
	meta: FieldMeta,
	visit: Visit,
	before: unknown,
): string {
	const last = repeats(meta) ? meanOf(before as Reading) : undefined
	if (last === undefined) return ''
	const now = meanOf(readPath(visit, path) as Reading)
	const by = now === undefined ? undefined : rounded(now - last, 1)
	const step = by === undefined ? '' : `, ${by === 0 ? 'the same' : signed(by)}`
	return `last ${rounded(last, 1)}${step}`
}
