/** How long a session lasts where a list does not say. */
import type { ImportChoices } from '../../shared/engine/season/preview.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'

/** The clinic's usual minutes of a training or a match. */
export const usualMinutes = (kind: Session['kind'], choices: ImportChoices): number =>
	kind === 'match' ? choices.matchMinutes : choices.trainingMinutes
/** Says how many sessions of a list were given the usual length, if any. */
export function assumedLengthNotes(sessions: readonly Session[]): string[] {
	const assumed = sessions.filter((session) => session.minutesAssumed).length
	if (assumed === 0) return []
	return [
		`${assumed} ${assumed === 1 ? 'session has' : 'sessions have'} no length in the list: the ` +
			'usual one was taken.',
	]
}
