/**
 * What is private between the player and the clinician, and who may be told of it. Safeguarding is
 * in no document at all, and nobody can release it.
 */
import type { Release } from '../visit/decisions.ts'
import type { Audience, PrivateTopic } from './sentence.ts'

export type ReleasableTopic = Exclude<PrivateTopic, 'safeguarding'>
const releasable: readonly ReleasableTopic[] = ['pregnancy', 'periods', 'medication', 'weight']

/**
 * The private topics that a reader may be told of: adults of their own, a doctor what the letter
 * needs. A guardian reads what was released to guardians, and so does a child, whose page is read at
 * home. All others none: a laboratory has body mass from the order itself.
 */
export function toldTo(
	reader: Audience,
	releases: readonly Release[] = [],
	minor = false,
): readonly ReleasableTopic[] {
	if (reader === 'clinician' || reader === 'doctor') return releasable
	if (reader === 'laboratory' || reader === 'coach') return []
	if (reader === 'player' && !minor) return releasable
	return releasable.filter((topic) => releases.some((release) => release.topic === topic))
}
