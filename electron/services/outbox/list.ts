/** The outbox as its screen shows it. */
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { ageDays, numberOf, type OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { PlayersMemory } from '../players/memory.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { type VisitLine, visitsOf } from '../visits/visits.ts'

/** What is known of an item just now and stands in no record. */
interface Now {
	/** whether it is being sent */
	inFlight: (itemId: string) => boolean
	/** whether who is at work compared it with its page */
	isCompared: (item: OutboxItem) => boolean
}
/** Oldest first, without passwords. */
export function viewsOf(
	{ outbox, players }: Pick<Memory, 'outbox' | 'players'>,
	deps: Deps,
	now: Now,
): OutboxView[] {
	const linesOf = linesByPlayer(players, deps)
	return outbox.items
		.all()
		.filter((item) => players.byId.has(item.playerId))
		.map((item) => viewOf(item, players, deps, linesOf, now))
		.sort((left, right) => (left.createdAt < right.createdAt ? -1 : 1))
}
/** The visits of a player, looked up once however many items are about them. */
function linesByPlayer(players: PlayersMemory, deps: Deps): (playerId: string) => VisitLine[] {
	const known = new Map<string, VisitLine[]>()
	return (playerId) => {
		const lines = known.get(playerId) ?? visitsOf(players, deps, playerId)
		known.set(playerId, lines)
		return lines
	}
}
/** States in which nothing is due any more: it left, or it was given up. */
const hasLeft: readonly OutboxItem['state'][] = ['sent', 'delivered', 'closed']

function viewOf(
	whole: OutboxItem,
	players: PlayersMemory,
	deps: Deps,
	linesOf: (playerId: string) => VisitLine[],
	{ inFlight, isCompared }: Now,
): OutboxView {
	const { password: _, handing: __, ...item } = whole
	const playerId = players.rootOf(item.playerId)
	const card = linesOf(playerId).find((line) => line.card.visitId === item.visitId)?.card
	return {
		...item,
		number: numberOf(item.itemId),
		playerName: players.nameOf(playerId),
		birthDate: players.entry(playerId).player.birthDate,
		visitDate: card?.visitDate ?? '',
		ageDays: ageDays(item.createdAt, deps.now().toISOString()),
		overdue: !hasLeft.includes(item.state) && item.due < dayHere(deps.now()),
		sending: inFlight(item.itemId),
		compared: isCompared(whole),
		...(card && card.version > item.version && { newerVersion: card.version }),
	}
}
