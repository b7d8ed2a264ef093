/**
 * What is private between the player and the clinician, and who may be told of it. Safeguarding is
 * in no document at all, and nobody can release it.
 */
import type { Release } from '../visit/decisions.ts'
import type { Audience, PrivateTopic } from './sentence.ts'

export type ReleasableTopic = Exclude<PrivateTopic, 'safeguarding'>
const releasable: readonly ReleasableTopic[] = ['pregnancy', 'periods', 'medication', 'weight']
/** Whom a page of a reader reaches besides: what a child is handed is read at home. */
const readBy = (reader: Audience, minor: boolean): readonly Audience[] =>
	reader === 'player' && minor ? ['player', 'guardian'] : [reader]

/**
 * The private topics that a reader may be told of: a doctor what the letter needs; player and
 * guardian what was released to them, on a child's own page only what both may read; all others
 * none. A laboratory has body mass from the order itself.
 */
export function toldTo(
	reader: Audience,
	releases: readonly Release[] = [],
	minor = false,
): readonly ReleasableTopic[] {
	if (reader === 'clinician' || reader === 'doctor') return releasable
	return releasable.filter((topic) =>
		readBy(reader, minor).every((person) =>
			releases.some((release) => release.topic === topic && release.to === person),
		),
	)
}
