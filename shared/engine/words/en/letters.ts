/** How soon a doctor is asked to act, in words for the clinician. */
import type { Urgency } from '../../visit/letters.ts'

export const urgencyWords: Readonly<Record<Urgency, string>> = {
	letter: 'routine',
	imaging: 'before impact sport',
	'same-day': 'same day',
	emergency: 'emergency, now',
}
