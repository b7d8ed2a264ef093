/** What a person is told of a part of a list that cannot be read. */

/** A refusal of one event, in words. */
export class Unreadable extends Error {}

/**
 * Why something cannot be read: the reader's own words on the text it met, never those of a fault
 * in the program that reads.
 */
export function reasonOf(error: unknown): string {
	const spoken = error instanceof Error && !(error instanceof TypeError) ? error.message : ''
	return spoken === '' || /undefined|NaN/.test(spoken)
		? 'its lines are not as a calendar has them'
		: spoken.slice(0, 100)
}
