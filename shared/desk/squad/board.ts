/** The live board: who is where, what is missing, what to do next. */
import type { Visit } from '../../engine/visit/visit.ts'
import { missingAt, type StationId, stations } from './stations.ts'

export const presences = ['expected', 'here', 'absent', 'refused'] as const
type Presence = (typeof presences)[number]
export interface BoardInput {
	playerId: string
	number: string
	name: string
	birthDate: string
	presence: Presence
	reason?: string
	at?: StationId
	since?: string
	draft?: Visit
	signedVisitId?: string
	consentNoted: boolean
}
export interface BoardRow {
	playerId: string
	number: string
	name: string
	birthDate: string
	presence: Presence
	reason?: string
	at?: StationId
	since?: string
	state: 'expected' | 'open' | 'ready' | 'signed' | 'absent' | 'refused'
	missing: { station: StationId; count: number }[]
	consentNoted: boolean
	signedVisitId?: string
}
/** What each station still lacks; of all that it needs where nothing is recorded yet. */
const missingOf = (draft: Visit | undefined): BoardRow['missing'] =>
	stations
		.map(({ id, needs }) => ({
			station: id,
			count: draft ? missingAt(draft, id).length : needs.length,
		}))
		.filter(({ count }) => count > 0)

/**
 * A player is ready to sign once every station has what it needs and consent is noted. Signing
 * stays one by one.
 */
function stateOf(player: BoardInput, missing: BoardRow['missing']): BoardRow['state'] {
	if (player.signedVisitId !== undefined) return 'signed'
	if (player.presence === 'absent' || player.presence === 'refused') return player.presence
	if (!player.draft) return 'expected'
	return missing.length === 0 && player.consentNoted ? 'ready' : 'open'
}
export function boardRow(player: BoardInput): BoardRow {
	const missing = missingOf(player.draft)
	const state = stateOf(player, missing)
	const { playerId, number, name, birthDate, presence, consentNoted } = player
	return {
		playerId,
		number,
		name,
		birthDate,
		presence,
		...(player.reason && { reason: player.reason }),
		...(player.at && { at: player.at }),
		...(player.since && { since: player.since }),
		state,
		missing: state === 'open' || state === 'expected' ? missing : [],
		consentNoted,
		...(player.signedVisitId && { signedVisitId: player.signedVisitId }),
	}
}
/** Numbers that stand for more than one player of the day. */
export function doubledNumbers(
	rows: readonly Pick<BoardRow, 'number' | 'name'>[],
): { number: string; names: string[] }[] {
	const found = new Map<string, string[]>()
	for (const { number, name } of rows) found.set(number, [...(found.get(number) ?? []), name])
	return [...found]
		.filter(([, names]) => names.length > 1)
		.map(([number, names]) => ({ number, names }))
}
