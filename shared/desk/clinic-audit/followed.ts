/** Who was seen again, and pain and sessions missed before and after, by condition and by measure. */
import { conditions } from '../../engine/visit/terms.ts'
import type { Visit } from '../../engine/visit/visit.ts'
import { wornCells } from './advice.ts'
import { goneCell } from './gone.ts'
import { type Asking, type Course, type Look, looksOf, type Mark, type Seen } from './seen.ts'
import { within } from './tally.ts'

type Told = NonNullable<Visit['conditions']>
/** What was done for a player at a visit, as it was settled. */
export const measuresTaken = ['insert', 'raise', 'pair'] as const
type Taken = (typeof measuresTaken)[number]

function takenAt({ plan }: Seen): Taken[] {
	const is: Record<Taken, boolean> = {
		insert: plan.insert.left.state === 'proposed' || plan.insert.right.state === 'proposed',
		raise: plan.raise.pairs.some(({ left, right }) => left.addMm > 0 || right.addMm > 0),
		pair: plan.pairs.some(({ means }) => means === 'buy'),
	}
	return measuresTaken.filter((measure) => is[measure])
}
/** All that was told of a condition at a visit: of one side or of both. */
const toldOf = ({ visit }: Seen, condition: string): Told =>
	(visit.conditions ?? []).filter((one) => one.condition === condition)
const isNow = ({ status = 'current' }: Told[number]): boolean => status !== 'past'
/** The most that was told of either side; undefined where nothing was. */
function mostOf(told: Told, what: 'painWorst' | 'sessionsMissed'): number | undefined {
	const values = told.flatMap((one) => one[what] ?? [])
	return values.length > 0 ? Math.max(...values) : undefined
}
const names = { painWorst: 'pain', sessionsMissed: 'sessions' } as const
/** What was told at a visit, beside what the next visit that tells it says. */
function beforeAndAfter(
	{ then, later }: Look,
	condition: string,
	what: keyof typeof names,
): Pick<Mark, 'cells' | 'values'> {
	const before = mostOf(toldOf(then, condition), what)
	const after = later.flatMap((one) => mostOf(toldOf(one, condition), what) ?? [])[0]
	const name = names[what]
	return before === undefined || after === undefined
		? { cells: [`${name}-missing`] }
		: { cells: [`${name}-told`], values: { [`${name}-before`]: before, [`${name}-after`]: after } }
}
/** Pain and sessions of a player who was seen again. */
function toldCells(look: Look, condition: string | undefined): Pick<Mark, 'cells' | 'values'> {
	if (condition === undefined) return { cells: ['pain-missing', 'sessions-missing'] }
	const pain = beforeAndAfter(look, condition, 'painWorst')
	const sessions = beforeAndAfter(look, condition, 'sessionsMissed')
	return {
		cells: [...pain.cells, ...sessions.cells],
		values: { ...pain.values, ...sessions.values },
	}
}
const markOf = (look: Look, condition: string | undefined, today: string) =>
	look.later.length === 0 ? { cells: [goneCell(look, today)] } : toldCells(look, condition)

/** By condition, at the first visit of the period at which the player has it; and by what was done. */
export function conditionMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking)
	return conditions.flatMap((condition) => {
		const look = looks.find(({ then }) => toldOf(then, condition).some(isNow))
		if (!look) return []
		const mark = { table: 'condition' as const, ...markOf(look, condition, asking.today) }
		const taken = takenAt(look.then)
		const part = taken.length > 0 ? taken.join('+') : 'none'
		return [
			{ ...mark, row: condition },
			{ ...mark, row: `${condition}${within}${part}` },
		]
	})
}
/** The condition that hurts most at a visit: the first of those alike. */
function worstOf({ visit }: Seen): string | undefined {
	const now = (visit.conditions ?? []).filter(isNow)
	return now.toSorted((one, other) => (other.painWorst ?? -1) - (one.painWorst ?? -1))[0]?.condition
}
/** By what was done, at the first visit of the period at which it was, whatever the condition. */
export function measureMarks(course: Course, asking: Asking): Mark[] {
	const looks = looksOf(course, asking)
	return [...measuresTaken, 'none' as const].flatMap((measure): Mark[] => {
		const look = looks.find(({ then }) => {
			const taken = takenAt(then)
			return measure === 'none' ? taken.length === 0 : taken.includes(measure)
		})
		if (!look) return []
		const mark = markOf(look, worstOf(look.then), asking.today)
		const worn =
			look.later.length === 0 ? [] : measure === 'none' ? ['unasked'] : wornCells(look, measure)
		return [{ table: 'measure', row: measure, ...mark, cells: [...mark.cells, ...worn] }]
	})
}
