/** How long a session lasts where a list does not say. */
import type { ImportChoices } from '../../shared/engine/season/preview.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'

/** The clinic's usual minutes of a training or a match. */
export const usualMinutes = (kind: Session['kind'], choices: ImportChoices): number =>
	kind === 'match' ? choices.matchMinutes : choices.trainingMinutes
/** Says how many sessions of a list were given the usual length, if any. */
export function assumedLengthNotes(sessions: readonly Session[]): Statement[] {
	const assumed = sessions.filter((session) => session.minutesAssumed).length
	return assumed === 0 ? [] : [state('season.length-assumed', { sessions: assumed })]
}
