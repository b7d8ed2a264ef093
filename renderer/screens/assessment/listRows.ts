/** Rows of the lists of a visit, taken out without losing what was typed in the others. Pure. */
import type { DraftContent } from '../../../shared/contract.ts'
import { writePath } from '../../parts/draft-path.ts'

/** What stands by path below a list: that of the row goes, that of later rows moves up with them. */
function movedUp<Kept>(
	byPath: Readonly<Record<string, Kept>>,
	list: string,
	index: number,
): Record<string, Kept> {
	return Object.fromEntries(
		Object.entries(byPath).flatMap(([path, kept]): [string, Kept][] => {
			const [head, place = '', ...rest] = path.split('.')
			const at = Number(place)
			if (head !== list || at < index || !Number.isInteger(at)) return [[path, kept]]
			return at === index ? [] : [[[head, at - 1, ...rest].join('.'), kept]]
		}),
	)
}
/** @param index place of the row from 0 */
export function withoutRow(
	{ visit, ...draft }: DraftContent,
	list: 'conditions' | 'footwear',
	index: number,
): DraftContent {
	const left = (visit[list] ?? []).filter((_, at) => at !== index)
	const { notMeasured, ...others } = writePath(visit, list, left.length > 0 ? left : undefined)
	const reasons = movedUp(notMeasured ?? {}, list, index)
	return {
		...draft,
		raw: movedUp(draft.raw, list, index),
		visit: { ...others, ...(Object.keys(reasons).length > 0 ? { notMeasured: reasons } : {}) },
	}
}
