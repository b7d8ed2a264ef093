/** What a record of before 0.4 decided is worn inside a shoe: what was planned by it is found so. */
import type { Decisions } from '../visit/decisions.ts'

/** Whether the clinician decided, line by line, that something is worn inside the shoe. */
export const insertDecided = ({ heelRaiseMm, insert }: Decisions): boolean =>
	(heelRaiseMm !== undefined && heelRaiseMm.left + heelRaiseMm.right > 0) ||
	[...(insert?.left ?? []), ...(insert?.right ?? [])].some((element) => element.choice !== 'drop')
