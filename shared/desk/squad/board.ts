/** The live board: who is where, what is missing, what to do next. */
import type { Visit } from '../../engine/visit/visit.ts'
import { missingAt, type StationId, stations } from './stations.ts'

export type Presence = 'expected' | 'here' | 'absent' | 'refused'
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
/**
 * A player is ready to sign once every station has what it needs and consent is noted. Signing
 * stays one by one.
 */
export function boardRow(one: BoardInput): BoardRow {
	const missing = stations.flatMap(({ id }) => {
		const count = one.draft
			? missingAt(one.draft, id).length
			: (stations.find((station) => station.id === id)?.needs.length ?? 0)
		return count > 0 ? [{ station: id, count }] : []
	})
	const closed = one.signedVisitId !== undefined
	const state: BoardRow['state'] = closed
		? 'signed'
		: one.presence === 'absent' || one.presence === 'refused'
			? one.presence
			: !one.draft
				? 'expected'
				: missing.length === 0 && one.consentNoted
					? 'ready'
					: 'open'
	const { playerId, number, name, birthDate, presence, consentNoted } = one
	return {
		playerId,
		number,
		name,
		birthDate,
		presence,
		...(one.reason ? { reason: one.reason } : {}),
		...(one.at ? { at: one.at } : {}),
		...(one.since ? { since: one.since } : {}),
		state,
		missing: state === 'open' || state === 'expected' ? missing : [],
		consentNoted,
		...(one.signedVisitId ? { signedVisitId: one.signedVisitId } : {}),
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
