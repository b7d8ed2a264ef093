/** A team's list: read with a preview, then taken in as a screening day. */

import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Roster } from '../../../shared/desk/squad/roster.ts'
import type { RosterRow } from '../../../shared/desk/squad/roster-row.ts'
import { rolesAsked } from '../../../shared/desk/squad/roster-sharing.ts'
import type { MemberValue } from '../../../shared/desk/squad/squad-record.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { PlayersMemory } from '../players/memory.ts'
import { likeness } from '../players/names.ts'
import { keepPlayer } from '../players/players.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { dayOf } from './day.ts'
import { type ConsentsOf, consentsKept, peopleMeant } from './roster-consents.ts'
import { rosterOfText } from './roster-text.ts'

type RosterPlayer = RosterRow['player']
/** What is said for a row that is the same person as another one. */
const leftOut = 'leave-out'
/** Players on record that are shown as likely the same. */
const mostKnown = 5

type Asked = Pick<InputOf<'squad.previewRoster'>, 'text' | 'team' | 'day' | 'answers'>
/** Who is on the board that rows are to join; nobody on a new one. */
const boardOf = (deps: Deps, squadId: string | undefined): readonly MemberValue[] =>
	squadId ? dayOf(deps, squadId).members : []
function rosterOf(
	{ clinic }: Pick<Memory, 'clinic'>,
	board: readonly MemberValue[],
	{ text, team, day, answers = {} }: Asked,
): Roster {
	const { ownConsentYears } = clinic.settings.ages
	const taken = board.map(({ number }) => number)
	return rosterOfText(text, { team, on: day, ownConsentYears, answers, taken })
}
/** Reads a roster and changes nothing: players that are on record already are pointed out. */
export function previewRoster(
	memory: Pick<Memory, 'clinic' | 'players'>,
	deps: Deps,
	input: InputOf<'squad.previewRoster'>,
): OutputOf<'squad.previewRoster'> {
	const { rows, titleLines, headings, missing, dates, problems, bad } = rosterOf(
		memory,
		boardOf(deps, input.squadId),
		input,
	)
	return {
		problems,
		bad,
		titleLines,
		headings,
		missing,
		dates,
		asksFor: rolesAsked(rows.flatMap(({ consents }) => consents)),
		rows: rows.map(({ row, number, isNumbered, player, consents }, place) => ({
			row,
			number,
			...(isNumbered && { isNumbered }),
			name: fullName(player),
			birthDate: player.birthDate,
			...(player.guardian && { guardian: player.guardian.name }),
			consents,
			known: knownAs(memory.players, player),
			alike: alikeAbove(rows, place),
		})),
	}
}
function knownAs(players: PlayersMemory, player: RosterPlayer) {
	const known = players.ordered().flatMap(({ card }) => {
		const why = likeness(player, card)
		if (!why) return []
		const name = fullName(card)
		return [{ playerId: card.playerId, name, birthDate: card.birthDate, why }]
	})
	return known.slice(0, mostKnown)
}
/** Rows above that may be the same player. */
function alikeAbove(rows: readonly RosterRow[], place: number) {
	const own = rows[place]
	if (own === undefined) return []
	return rows.slice(0, place).flatMap(({ row, player }) => {
		const why = likeness(own.player, player)
		return why ? [{ row, name: fullName(player), birthDate: player.birthDate, why }] : []
	})
}
type CreateNeeds = Pick<Memory, 'clinic' | 'drafts' | 'outbox' | 'people' | 'players'>
/**
 * Takes the good rows in; the others are named, and keep nobody out. `same` says for a row which
 * player on record it is, or that it is to be left out; where one is likely and nothing is said, it
 * is refused.
 */
export function createSquad(
	memory: CreateNeeds,
	deps: Deps,
	input: InputOf<'squad.create'>,
): OutputOf<'squad.create'> {
	const ready = readyRows(memory, deps, input)
	const { team, day } = input
	const squadId = input.squadId ?? randomUUID()
	deps.store.together(() => {
		for (const row of ready.rows) {
			const playerId = playerOf(memory, deps, row, ready)
			const value: MemberValue = {
				what: 'member',
				squadId,
				team,
				day,
				playerId,
				number: row.number,
			}
			deps.keep({ kind: 'squad', value, about: playerId })
		}
	})
	return { squadId, ...outcomeOf(ready) }
}
/** The same of players who are put on record without a screening day. */
export function importPlayers(
	memory: CreateNeeds,
	deps: Deps,
	input: InputOf<'squad.importPlayers'>,
): OutputOf<'squad.importPlayers'> {
	const ready = readyRows(memory, deps, input)
	deps.store.together(() => {
		for (const row of ready.rows) playerOf(memory, deps, row, ready)
	})
	return outcomeOf(ready)
}
interface Ready {
	roster: Roster
	/** those that are taken in */
	rows: readonly RosterRow[]
	same: InputOf<'squad.create'>['same']
	about: ConsentsOf
}
const outcomeOf = ({ rows, roster }: Ready) => ({
	players: rows.length,
	taken: rows.map(({ row }) => row),
	left: roster.bad.map(({ row }) => row),
})
/** @throws Refusal where nothing can be taken in, or something is to be said first */
function readyRows(
	memory: CreateNeeds,
	deps: Deps,
	input: Omit<InputOf<'squad.create'>, 'squadId'> & { squadId?: string | undefined },
): Ready {
	const { team, day, same, squadId } = input
	const board = boardOf(deps, squadId)
	const roster = rosterOf(memory, board, input)
	refuseUnusable(memory.players, roster, same)
	const rows = roster.rows.filter(({ row }) => same[String(row)] !== leftOut)
	refuseTwice(board, rows, same)
	const meant = peopleMeant(memory, rows, input.people ?? {})
	return { roster, rows, same, about: { team, day, meant } }
}
/** The player of a row, put on record where nobody is; with the consents of the row. */
function playerOf(
	memory: CreateNeeds,
	deps: Deps,
	{ row, player, consents }: RosterRow,
	{ same, about }: Ready,
): string {
	const known = onRecord(memory, same[String(row)])
	const playerId = known ?? keepPlayer(deps, { player })
	consentsKept(memory, deps, { playerId, isNew: known === undefined, player, consents }, about)
	return playerId
}
/** @throws Refusal where no row can stand, or it is not said who is on record already */
function refuseUnusable(
	players: PlayersMemory,
	{ rows, problems }: Roster,
	same: InputOf<'squad.create'>['same'],
): void {
	if (rows.length === 0 && problems.length > 0)
		throw new Refusal(
			'squad.roster-rows',
			'The roster has no row that can stand. Repair them first. Nothing was changed.',
			problems.map((problem) => ({
				path: `row ${problem.row}, ${problem.column}`,
				message: problem.message,
			})),
		)
	if (rows.length === 0)
		throw new Refusal('squad.roster-empty', 'The roster has no players. Nothing was changed.')
	const open = rows.filter(
		({ row, player }, place) =>
			same[String(row)] === undefined &&
			(knownAs(players, player).length > 0 || alikeAbove(rows, place).length > 0),
	)
	if (open.length > 0)
		throw new Refusal(
			'squad.roster-not-answered',
			'Some players may be on record already, or stand in the list twice. Say for each whether ' +
				'it is the same person.',
			open.map(({ row, player }) => ({
				path: `row ${row}`,
				message: `not answered, given ${fullName(player)}, allowed: a player on record, new, or left out`,
			})),
		)
}
/** @throws Refusal where two rows are said to be one player, or one who is on the board */
function refuseTwice(
	board: readonly MemberValue[],
	rows: readonly RosterRow[],
	same: InputOf<'squad.create'>['same'],
): void {
	const said = new Set(board.map(({ playerId }) => playerId))
	const twice = rows.filter(({ row }) => {
		const answer = same[String(row)]
		if (answer === undefined || answer === 'new') return false
		const isTwice = said.has(answer)
		said.add(answer)
		return isTwice
	})
	if (twice.length > 0)
		throw new Refusal(
			'squad.player-twice',
			'A player cannot stand on the board twice. Nothing was changed.',
			twice.map(({ row, player }) => ({
				path: `row ${row}`,
				message:
					`given ${fullName(player)}, who is on the board or in another row already, allowed: ` +
					'another player, new, or left out',
			})),
		)
}
/**
 * The player on record that a row is; undefined for somebody new.
 * @param answer a player on record, or 'new'; undefined where nobody is like this one
 */
function onRecord(
	{ players }: Pick<Memory, 'players'>,
	answer: string | undefined,
): string | undefined {
	if (answer === undefined || answer === 'new') return undefined
	return players.entry(answer).card.playerId
}
