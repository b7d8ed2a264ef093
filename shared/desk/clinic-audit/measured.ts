/** Labels against measured lengths, stages against later visits, sizes measured again. */
import { lengthOfLabel } from '../../engine/sizing/label-length.ts'
import type { Pair } from '../../engine/visit/visit.ts'
import { type Asking, type Course, looksOf, type Mark, measuredFootMm, type Seen } from './seen.ts'

/** What a pair is counted under: its model, where the shelf has it, else its size system. */
const rowOf = ({ model, sizeSystem }: Pair, { models }: Asking): string | undefined =>
	(model && models.get(model)) ?? (sizeSystem && `system:${sizeSystem}`)
/** What the measured inside length is more than the length that the label names, mm. */
function differenceOf({ insideLengthMm, sizeSystem, size }: Pair): number | undefined {
	if (insideLengthMm === undefined || sizeSystem === undefined || size === undefined)
		return undefined
	return Math.round((insideLengthMm - lengthOfLabel(sizeSystem, size, insideLengthMm)) * 10) / 10
}
/** By model, at the first pair of a label in the period that was measured. */
export function labelMarks(course: Course, asking: Asking): Mark[] {
	const pairs = looksOf(course, asking).flatMap(({ then }) =>
		(then.visit.footwear ?? []).filter(
			({ plannedAs, size }) => plannedAs === undefined && size !== undefined,
		),
	)
	const rows = [...new Set(pairs.flatMap((pair) => rowOf(pair, asking) ?? []))]
	return rows.map((row): Mark => {
		const of = pairs.filter((pair) => rowOf(pair, asking) === row)
		const difference = of.flatMap((pair) => differenceOf(pair) ?? [])[0]
		return difference === undefined
			? { table: 'label', row, cells: ['missing'] }
			: { table: 'label', row, cells: ['measured'], values: { difference } }
	})
}
const order = ['before', 'around', 'after'] as const
type Stage = (typeof order)[number] | 'uncertain'
/** The stage that a visit gave; undefined where none was established. */
function stageOf({ assessment: { growth } }: Seen): Stage | undefined {
	if (!growth || growth.stageKnown === false) return undefined
	return growth.band
}
function moved(from: Stage, to: Stage): string {
	if (from === to) return 'same'
	if (to === 'uncertain') return 'uncertain'
	if (from === 'uncertain') return 'on'
	return order.indexOf(to) > order.indexOf(from) ? 'on' : 'back'
}
/** Change of the age at peak height velocity by one method, years: it should be none. */
function peakChange(then: Seen, later: Seen): number | undefined {
	const before = then.assessment.growth?.ageAtPeakHeightVelocityYears ?? {}
	const after = later.assessment.growth?.ageAtPeakHeightVelocityYears ?? {}
	const method = (['mirwald', 'moore', 'mooreSitting', 'fransen'] as const).find(
		(each) => before[each] !== undefined && after[each] !== undefined,
	)
	const [one, other] = method ? [before[method], after[method]] : []
	return one === undefined || other === undefined
		? undefined
		: Math.round((other - one) * 100) / 100
}
/** By stage, at the first visit of the period that gave it, against the next that gave one. */
export function stageMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking)
	return [...order, 'uncertain' as const].flatMap((row): Mark[] => {
		const look = looks.find(({ then }) => stageOf(then) === row)
		if (!look) return []
		const next = look.later.find((later) => stageOf(later) !== undefined)
		const to = next && stageOf(next)
		const change = next && peakChange(look.then, next)
		return [
			{
				table: 'stage',
				row,
				cells: [
					to === undefined ? 'missing' : moved(row, to),
					change === undefined ? 'peak-missing' : 'peak-told',
				],
				...(change !== undefined && { values: { 'peak-change': change } }),
			},
		]
	})
}
const isTaken = ({ visit }: Seen): boolean => visit.since?.unchanged?.includes('feet') === true
/** Of the first visit of the period with measured feet, against the next that says anything of them. */
export function sizeMarks(course: Course, asking: Asking): Mark[] {
	const look = looksOf(course, asking).find(({ then }) => measuredFootMm(then) !== undefined)
	const thenMm = look && measuredFootMm(look.then)
	if (thenMm === undefined) return []
	const mark = { table: 'size' as const, row: 'all' }
	const next = look?.later.find((later) => isTaken(later) || measuredFootMm(later) !== undefined)
	if (!next) return [{ ...mark, cells: ['missing'] }]
	const nextMm = measuredFootMm(next)
	if (nextMm === undefined) return [{ ...mark, cells: ['taken'] }]
	const label = ({ assessment }: Seen) => assessment.sizing.sizes?.eu.label
	return [
		{
			...mark,
			cells: [look && label(look.then) === label(next) ? 'same-label' : 'other-label'],
			values: { change: Math.round((nextMm - thenMm) * 10) / 10 },
		},
	]
}
