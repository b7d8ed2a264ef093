/** How what is due stands by the newest answers, on a day. Pure: today is passed in. */
import { addDays, dayNumber, daysPerWeek } from '../../engine/plain/days.ts'
import { isEnding, type RecallRecord } from './answer.ts'
import { type Due, dueKinds, keyOf } from './item.ts'

export const standings = ['due', 'booked', 'waits', 'ended'] as const
export type Standing = (typeof standings)[number]
/** An item with how it stands. */
export interface StandingDue extends Due {
	standing: Standing
	/** the day it stands under: what is booked or waits has its own */
	day: string
	/** what was answered last */
	answered?: Pick<RecallRecord, 'answer' | 'by' | 'at'>
}
/** A booked day that is past without a visit, and a wait that is over, are due again. */
function stands(due: Due, answer: RecallRecord['answer'] | undefined, today: string) {
	if (!answer || answer.what === 'due') return { standing: 'due', day: due.on } as const
	if (isEnding(answer)) return { standing: 'ended', day: due.on } as const
	if (answer.what === 'booked')
		return answer.on >= today
			? ({ standing: 'booked', day: answer.on } as const)
			: ({ standing: 'due', day: due.on } as const)
	if (answer.what === 'wait')
		return answer.until > today
			? ({ standing: 'waits', day: answer.until } as const)
			: ({ standing: 'due', day: answer.until } as const)
	return { standing: 'due', day: due.on } as const
}
/**
 * The items as they stand, the first due first. @param answers the newest of each item, by `keyOf`
 */
export function standingOf(
	dues: readonly Due[],
	answers: ReadonlyMap<string, RecallRecord>,
	today: string,
): StandingDue[] {
	return dues
		.map((due): StandingDue => {
			const record = answers.get(keyOf(due))
			return {
				...due,
				...stands(due, record?.answer, today),
				...(record && { answered: { answer: record.answer, by: record.by, at: record.at } }),
			}
		})
		.toSorted(
			(one, other) =>
				one.day.localeCompare(other.day) ||
				dueKinds.indexOf(one.kind) - dueKinds.indexOf(other.kind),
		)
}
/** The Monday of the week of a day; 1 January 1970 was a Thursday. */
export const mondayOf = (day: string): string =>
	addDays(day, -((((dayNumber(day) + 3) % daysPerWeek) + daysPerWeek) % daysPerWeek))
/** Where a day stands in the list: before today, or the Monday of its week. */
export const weekOf = (day: string, today: string): 'overdue' | string =>
	day < today ? 'overdue' : mondayOf(day)
