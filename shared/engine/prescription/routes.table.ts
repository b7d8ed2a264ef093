/**
 * Under which question a finding is read, by the beginning of its code: the longest that fits.
 * `pair` is the question of the role that asks for what the finding speaks of. What no line names
 * is read at the review.
 */
export type Subject = 'gate' | 'complaint' | 'size' | 'raise' | 'pair' | 'owned' | 'insert' | 'changes' | 'lacing' | 'review'

export const routes: readonly (readonly [code: string, subject: Subject])[] = [
	['screening.', 'gate'],
	['gate.', 'gate'],
	['conditions.', 'complaint'],
	['loading.', 'complaint'],
	['sizing.', 'size'],
	['growth.foot-', 'size'],
	['growth.toe-room', 'owned'],
	['growth.', 'review'],
	['ankle.', 'raise'],
	['raise.', 'raise'],
	['posture.leg-length', 'raise'],
	['posture.', 'review'],
	['footwear.pair', 'owned'],
	['footwear.', 'pair'],
	['pairs.', 'owned'],
	['owned.', 'owned'],
	['insert.', 'insert'],
	['work.', 'changes'],
	['lacing.', 'lacing'],
	['recheck.insert-', 'insert'],
	['recheck.raise-', 'raise'],
	['recheck.pair-', 'owned'],
	['recheck.measure-again', 'size'],
	['onfoot.', 'owned'],
]
