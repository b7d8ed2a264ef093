/** What the player has or had. */
import { z } from 'zod'
import { choice, count, text } from '../fields.ts'
import { conditions, statuses } from '../terms.ts'

export const conditionSchema = z.strictObject({
	condition: choice('Condition', conditions),
	side: choice('Side', ['left', 'right', 'both', 'none']),
	status: choice('Status', statuses),
	painWorst: count('Worst pain', '/10', [0, 10]).optional(),
	note: text('Note', 500).optional(),
})
