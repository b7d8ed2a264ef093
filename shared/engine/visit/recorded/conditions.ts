/** What the player has or had. */
import { z } from 'zod'
import { choice, count, isoDate, text, yesNo } from '../fields.ts'
import { conditions, features, statuses } from '../terms.ts'

export const conditionSchema = z.strictObject({
	condition: choice('Condition', conditions),
	side: choice('Side', ['left', 'right', 'both', 'none']),
	/** Absent until it is said: the condition then counts nowhere, and keeps the visit from signing. */
	status: choice('Status', statuses).optional(),
	painWorst: count('Worst pain', '/10', [0, 10]).optional(),
	/** Of a re-check: how it is today, and what it cost since the visit before. */
	painNow: count('Pain now', '/10', [0, 10]).optional(),
	daysOff: count('Days off sport', 'days', [0, 2000], [0, 120]).optional(),
	sessionsMissed: count('Sessions missed', 'sessions', [0, 2000], [0, 60]).optional(),
	note: text('Note', 500).optional(),
	/** After surgery: which, when, and whether the surgeon has cleared the player for impact. */
	operation: text('Operation', 120).optional(),
	operationDate: isoDate('Day of the operation').optional(),
	clearedBySurgeon: yesNo('Surgeon allows running and jumping'),
	/** One that has no name in the list: what it is, and what the clinician asks of a shoe for it. */
	inWords: text('What it is', 80).optional(),
	seek: z.array(choice('Seek in a shoe', features)).max(12).optional(),
	avoid: z.array(choice('Avoid in a shoe', features)).max(12).optional(),
})
