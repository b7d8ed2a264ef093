/** Which of the signs that are seen the same day are seen in an emergency department. */
import type { Action } from '../findings/screening-result.ts'
import type { StatementCode } from '../words/statement.ts'

/** A bone of the hip that may slip or break through; the sentence of each sign asks for it too. */
const seenThere: ReadonlySet<string | undefined> = new Set<StatementCode>([
	'screening.limp-hip',
	'screening.hipPainWithLimp',
	'screening.bone-stress-hip',
])
/** Whether a sign, where it holds, is seen there. */
export const isSeenThere = ({ code }: { code?: string }): boolean => seenThere.has(code)
/** The place beside an action: none where the action says it, or where a surgery will do. */
export const placeFor = (
	action: Action,
	found: readonly { id: string; code?: string }[],
	because: ReadonlySet<string>,
): { at?: 'emergency-department' } =>
	action === 'same-day' && found.some((sign) => because.has(sign.id) && isSeenThere(sign))
		? { at: 'emergency-department' }
		: {}
