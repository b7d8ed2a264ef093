/** Whether a leg-length difference gives symptoms: one answer for every room. */
import type { Visit } from './visit.ts'

/** The recorded answer; failing that, a current leg-length condition counts as symptoms. */
export function legLengthSymptomatic(visit: Visit): boolean {
	return (
		visit.body?.legLengthSymptoms ??
		(visit.conditions ?? []).some(
			(condition) =>
				condition.condition === 'leg-length-difference' && condition.status === 'current',
		)
	)
}
