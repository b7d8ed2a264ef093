/** Cards: the short forms of records that lists need without opening the records. */

import type { z } from 'zod'
import type { KindDefinition } from '../../../shared/desk/ledger/kind.ts'
import { isKind, kinds, readAs } from '../../../shared/desk/ledger/ledger.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { RemakeCard, Store } from '../../store/store.ts'

export {
	type VisitCard,
	visitCard,
	visitCardSchema,
} from '../../../shared/desk/visits/visit-card.ts'

/** The cards that can be read, each with its record; another version may have made others. */
export function readCards<Card>(
	schema: z.ZodType<Card>,
	cards: ReturnType<Store['cardsAbout']>,
): { record: string; card: Card }[] {
	return cards.flatMap(({ record, card }) => {
		const read = schema.safeParse(card)
		return read.success ? [{ record, card: read.data }] : []
	})
}
/**
 * What the card of a record of the first versions says, which did not hold it itself: from the
 * record and, for a report, from the visit that it follows. Undefined where it cannot be read.
 */
export const remakeCard: RemakeCard = (record, find) => {
	const { kind, version, value, follows } = record
	if (!isKind(kind)) return undefined
	const definition: KindDefinition<unknown> = kinds[kind]
	const reading = readAs(kind, version, value)
	if (reading.state !== 'read') return undefined
	const followed = () => {
		const before = follows === undefined ? undefined : find(follows)
		return before && remakeCard(before, find)
	}
	const found = definition.foundBy?.(reading.value, followed)
	return found && present({ about: found.about, thing: found.thing, card: found.card })
}
