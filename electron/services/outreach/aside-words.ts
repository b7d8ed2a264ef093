/** Records as a person calls them. */
import { ledger } from '../../../shared/desk/ledger/ledger.ts'
import type { Carried } from '../../../shared/desk/outreach/carried.ts'

import { dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import type { Arrival } from './arrival.ts'

/** The name of a player who is known here or stands in the list of the file. */
export function playerName({ memory, pack }: Arrival, playerId: string | undefined): string {
	if (playerId === undefined) return ''
	return memory.players.byId.has(playerId)
		? memory.players.nameOf(playerId)
		: (pack.manifest.players.find((player) => player.playerId === playerId)?.name ?? '')
}
/** Such as "The consent of Tui Ashdown, written on 20 January 2027". */
export function recordName(arrival: Arrival, { kind, about, at }: Carried): string {
	const name = playerName(arrival, about)
	const what = ledger.get(kind)?.words.one ?? `record of the kind "${kind}"`
	return `The ${what}${name ? ` of ${name}` : ''}, written on ${dayOfMoment(at)}`
}
