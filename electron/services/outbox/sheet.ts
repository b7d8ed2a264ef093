/** What goes with a sending: the transmission sheet, and who must be told of a newer version. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { numberOf } from '../../../shared/desk/outbox/item.ts'
import { nameOnPaper } from '../../../shared/desk/outbox/recipients.ts'
import { transmissionSheet } from '../../../shared/desk/outbox/sheet.ts'
import { handedOverSchema, mustBeTold } from '../../../shared/desk/records/amendment.ts'
import { readCards } from '../records/cards.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { storedDocument } from '../visits/documents.ts'
import { pdfOf } from '../visits/drawing.ts'
import { visitsOf } from '../visits/visits.ts'
import { itemOf } from './items.ts'

/** Pages of stored PDF bytes, by their page objects. */
const pagesOf = (bytes: Uint8Array): number => {
	const pages = Buffer.from(bytes)
		.toString('latin1')
		.match(/\/Type\s*\/Page\b(?!s)/g)
	return Math.max(1, pages?.length ?? 0)
}
/** @throws Refusal where the item was neither checked nor sent */
export async function printSheet(
	memory: Pick<Memory, 'clinic' | 'outbox' | 'people' | 'players'>,
	deps: Deps,
	{ itemId }: InputOf<'outbox.sheet'>,
): Promise<OutputOf<'outbox.sheet'>> {
	const item = itemOf(memory, itemId)
	const clinic = memory.clinic.needLetterhead()
	if (!item.released && item.sentAt === undefined)
		throw new Refusal(
			'outbox.not-checked-yet',
			'This was not checked yet. Release it first; then its transmission sheet can be printed.',
		)
	const { bytes: document } = storedDocument(deps, item.documentId, item.sha256)
	const { player } = memory.players.entry(memory.players.rootOf(item.playerId))
	const sheet = transmissionSheet({
		item: { ...item, recipient: { ...item.recipient, name: nameOnPaper(item.recipient, player) } },
		clinic,
		by: memory.people.acts().name,
		at: deps.now().toISOString(),
		pages: pagesOf(document),
	})
	const bytes = await deps.renderPdf(sheet)
	const objectRef = `sheet:${numberOf(itemId)}`
	deps.store.audit({ function: 'print', objectRef, playerId: item.playerId })
	return pdfOf(bytes, `sheet-${numberOf(itemId)}.pdf`)
}
/** Recipients of an earlier version of any of the player's visits who were not given the latest. */
export function whoIsToBeTold(
	{ players }: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId }: InputOf<'outbox.tell'>,
): OutputOf<'outbox.tell'> {
	const visits = visitsOf(players, deps, players.rootOf(playerId)).filter((line) => !line.inError)
	return {
		tell: visits.flatMap(({ card: { visitId, visitDate, version } }) => {
			const sendings = readCards(handedOverSchema, deps.store.cardsOf('sending', visitId))
			const handed = sendings.map(({ card }) => card)
			return mustBeTold(handed, version).map((over) => ({
				...over,
				visitId,
				visitDate,
				latest: version,
			}))
		}),
	}
}
