/** What was sent or handed over of a player, to whom, by whom, and how it ended. */
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import type { SummarySent } from '../../../shared/desk/players/summary.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { visitsOf } from '../visits/visits.ts'

/** Sendings that are listed; the outbox has them all. A choice of this program. */
const mostSent = 200

const ways: Readonly<Record<string, SummarySent['way']>> = {
	print: 'print',
	export: 'export',
	send: 'smtp',
	'by-hand': 'hand-over',
}
type VisitDates = ReadonlyMap<string, string>

function ofItem(item: OutboxItem, dates: VisitDates): SummarySent {
	const { itemId, kind, recipient, state, channel, createdAt, history, released, sentAt } = item
	const isGivenUp = state === 'closed' && sentAt === undefined && item.taken === undefined
	return present({
		itemId,
		kind,
		to: recipient.name,
		role: recipient.role,
		visitDate: dates.get(item.visitId),
		by: released?.name ?? (sentAt === undefined ? undefined : item.owner.name),
		leftAt: sentAt,
		at: history.at(-1)?.at ?? createdAt,
		state: isGivenUp ? ('not-sent' as const) : state,
		way: channel,
		isInError: item.breachId !== undefined,
	})
}
/** What left or waits in the outbox, and what was handed over without it; newest first. */
export function sentOf(
	{ outbox, players }: Pick<Memory, 'outbox' | 'players'>,
	deps: Deps,
	playerId: string,
): SummarySent[] {
	const ids = players.idsOf(playerId)
	const dates = new Map(
		visitsOf(players, deps, playerId).map(({ card }) => [card.visitId, card.visitDate]),
	)
	const items = outbox.items.all().filter((item) => ids.includes(item.playerId))
	const copies = ids
		.flatMap((id) => deps.openAbout('sending', id).records)
		.flatMap(({ value }): SummarySent[] => {
			const item = items.find(({ itemId }) => itemId === value.itemId)
			// an item tells of its own sending; a further copy on paper went with no message
			if (value.itemId !== undefined && value.messageId !== undefined) return []
			return [
				present({
					itemId: item?.itemId,
					kind: item?.kind ?? ('player' as const),
					to: value.recipient,
					role: item?.recipient.role,
					visitDate: dates.get(value.visitId),
					by: value.by,
					leftAt: value.at,
					at: value.at,
					state: 'handed-over' as const,
					way: ways[value.channel] ?? ('hand-over' as const),
					isInError: false,
				}),
			]
		})
	return [...items.map((item) => ofItem(item, dates)), ...copies]
		.sort((left, right) => (left.at < right.at ? 1 : -1))
		.slice(0, mostSent)
}
