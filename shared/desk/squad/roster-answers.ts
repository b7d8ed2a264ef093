/** What a person says of a roster as it was read: everything that the list itself does not tell. */
import { z } from 'zod'
import { boundedRecord } from '../../engine/plain/bounded.ts'
import { sexes } from '../../engine/visit/terms.ts'
import { columns } from './roster-columns.table.ts'
import { dayOrders } from './roster-dates.ts'

/** A column of the list that is not read. */
export const unread = 'unread'
const cellText = z.string().max(300)

export const rosterAnswersSchema = z.strictObject({
	/** what a column is, by its place from 0, where its heading does not say so */
	columns: boundedRecord(4, z.enum([...columns, unread]), 200).optional(),
	dayOrder: z.enum(dayOrders).optional(),
	/** of all players, where the list has no column for it */
	sex: z.enum(sexes).optional(),
	/** cells as they should read, by row and column */
	repairs: boundedRecord(5, z.partialRecord(z.enum(columns), cellText), 1000).optional(),
	/** rows that were taken in already, or are left out */
	leaveOut: z.array(z.int().min(1)).max(1000).optional(),
})
export type RosterAnswers = z.infer<typeof rosterAnswersSchema>
