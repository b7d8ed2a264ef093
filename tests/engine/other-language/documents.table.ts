/** A few sentences of the documents in German. */
import type { DocumentSentences } from '../../../shared/engine/words/catalogue.ts'

export const german = {
	'player.reviewOn': 'Dein nächster Termin ist am {date}.',
	'player.whenNow': 'jetzt',
} satisfies Partial<DocumentSentences>
