/** What the season room says. */
import { seasonChangeSentences } from './season/changes.ts'
import { seasonFindingSentences } from './season/findings.ts'
import { seasonListSentences } from './season/lists.ts'
import { seasonFindingReadings } from './season/readings.ts'
import { seasonRefusalSentences } from './season/refusals.ts'
import { seasonSessionSentences } from './season/sessions.ts'

export const seasonSentences = {
	...seasonFindingSentences,
	...seasonSessionSentences,
	...seasonChangeSentences,
	...seasonListSentences,
	...seasonRefusalSentences,
}
/** Names of its numbers that are no measure of the visit. */
export const seasonReadings = seasonFindingReadings
