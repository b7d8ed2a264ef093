/** Cards: the short forms of records that lists need without opening the records. */

import type { z } from 'zod'
import type { Found, KindDefinition } from '../../../shared/desk/ledger/kind.ts'
import { isKind, kinds, kindsWhere, readAs } from '../../../shared/desk/ledger/ledger.ts'
import { unreadableWords } from '../../../shared/desk/ledger/words.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { SealBroken } from '../../store/seal.ts'
import type { Store } from '../../store/store.ts'

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
type WithoutCard = ReturnType<Store['withoutCard']>[number]

/**
 * Makes the cards that records of the first versions lack, once, from the records themselves.
 * @param damaged takes the words for each record that cannot be read
 */
export function makeCards(store: Store, damaged: string[]): void {
	const missing = store.withoutCard(kindsWhere((kind) => kind.foundBy !== undefined))
	if (missing.length === 0) return
	store.together(() => {
		// of the cards made so far: a report is found by the visit it follows
		const made = new Map<string, Found>()
		for (const record of missing) {
			const card = cardFor(store, record, made.get(record.follows ?? ''), damaged)
			if (!card) continue
			made.set(record.id, card)
			const { about, thing, card: short } = card
			store.putCard(record.id, record.kind, present({ about, thing, card: short }))
		}
	})
}
function cardFor(
	store: Store,
	{ id, kind }: WithoutCard,
	followed: Found | undefined,
	damaged: string[],
): Found | undefined {
	if (!isKind(kind)) return undefined
	const definition: KindDefinition<unknown> = kinds[kind]
	try {
		const record = store.read(id)
		const reading = readAs(kind, record.version, record.value)
		if (reading.state === 'read') return definition.foundBy?.(reading.value, followed)
		damaged.push(unreadableWords(record, reading))
	} catch (error) {
		if (!(error instanceof SealBroken)) throw error
		damaged.push(
			`Record ${id} (${kind}) is damaged and cannot be read. All other records are unaffected; ` +
				'restore it from a backup.',
		)
	}
	return undefined
}
