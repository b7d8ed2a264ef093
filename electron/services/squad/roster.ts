/** A team's list as text: read with a preview, then taken in as a screening day. */

import { randomUUID } from 'node:crypto'
import Papa from 'papaparse'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { NewConsent, Purpose } from '../../../shared/desk/records/consent.ts'
import { type Roster, rosterFromCells } from '../../../shared/desk/squad/roster.ts'
import type { MemberValue } from '../../../shared/desk/squad/squad-record.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { keepConsent, recordConsent } from '../people/consents.ts'
import type { PlayersMemory } from '../players/memory.ts'
import { likeness } from '../players/names.ts'
import { keepPlayer } from '../players/players.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { dayOf } from './day.ts'

type RosterRow = Roster['rows'][number]
type RosterPlayer = RosterRow['player']

/** Larger lists are refused before they are read. */
const longestChars = 2_000_000
/** Players on record that are shown as likely the same. */
const mostKnown = 5

function rosterOf(text: string, team: string, day: string, ownConsentYears: number): Roster {
	if (text.length > longestChars) {
		const message = `too large, given ${text.length} characters, allowed: ${longestChars} or fewer`
		return { rows: [], problems: [{ row: 1, column: '(file)', code: 'too-long', message }] }
	}
	const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, '').trim(), {
		skipEmptyLines: false,
		delimitersToGuess: [',', ';', '\t'],
	})
	const quotes = parsed.errors.filter((error) => error.type === 'Quotes')
	if (quotes.length > 0)
		return {
			rows: [],
			problems: quotes.map((quote) => ({
				row: (quote.row ?? 0) + 1,
				column: '(line)',
				code: 'open-quotes',
				message: 'quotation marks do not close, given an open one, allowed: a closing one',
			})),
		}
	return rosterFromCells(parsed.data, team, day, ownConsentYears)
}
/** Reads a roster and changes nothing: players that are on record already are pointed out. */
export function previewRoster(
	{ clinic, players }: Pick<Memory, 'clinic' | 'players'>,
	{ text, team, day }: InputOf<'squad.previewRoster'>,
): OutputOf<'squad.previewRoster'> {
	const { rows, problems } = rosterOf(text, team, day, clinic.settings.ages.ownConsentYears)
	return {
		problems,
		rows: rows.map(({ row, number, player, consents }) => ({
			row,
			number,
			name: fullName(player),
			birthDate: player.birthDate,
			...(player.guardian && { guardian: player.guardian.name }),
			consents,
			known: knownAs(players, player),
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
/**
 * Takes the good rows in. `same` says for a row which player on record it is; where one is likely
 * and nothing is said, it is refused.
 */
export function createSquad(
	memory: Pick<Memory, 'clinic' | 'drafts' | 'players'>,
	deps: Deps,
	{ text, team, day, same, squadId: into }: InputOf<'squad.create'>,
): OutputOf<'squad.create'> {
	const { ages } = memory.clinic.settings
	const roster = rosterOf(text, team, day, ages.ownConsentYears)
	refuseUnusable(memory.players, roster, same)
	const squadId = into ?? randomUUID()
	if (into !== undefined) refuseTakenNumbers(deps, into, roster.rows)
	deps.store.together(() => {
		for (const { row, number, player, consents } of roster.rows) {
			const known = onRecord(memory, same[String(row)])
			const playerId = known ?? keepPlayer(deps, { player })
			for (const purpose of consents) {
				const consent = consentOf(purpose, player, team, day, deps, ages.adultYears)
				if (known === undefined) keepConsent(deps, playerId, consent, undefined)
				else recordConsent(memory, deps, { playerId, consent })
			}
			const value: MemberValue = { what: 'member', squadId, team, day, playerId, number }
			deps.keep({ kind: 'squad', value, about: playerId })
		}
	})
	return { squadId, players: roster.rows.length }
}
/** @throws Refusal where rows cannot stand, or it is not said who is on record already */
function refuseUnusable(
	players: PlayersMemory,
	{ rows, problems }: Roster,
	same: InputOf<'squad.create'>['same'],
): void {
	if (problems.length > 0)
		throw new Refusal(
			'squad.roster-rows',
			'The roster has rows that cannot stand. Correct them in the list first. Nothing was changed.',
			problems.map((problem) => ({
				path: `row ${problem.row}, ${problem.column}`,
				message: problem.message,
			})),
		)
	if (rows.length === 0)
		throw new Refusal('squad.roster-empty', 'The roster has no players. Nothing was changed.')
	const open = rows.filter(
		({ row, player }) => same[String(row)] === undefined && knownAs(players, player).length > 0,
	)
	if (open.length > 0)
		throw new Refusal(
			'squad.roster-not-answered',
			'Some players may be on record already. Say for each whether it is the same person.',
			open.map(({ row, player }) => ({
				path: `row ${row}`,
				message: `not answered, given ${fullName(player)}, allowed: a player on record, or new`,
			})),
		)
}
/** @throws Refusal where a number is on the board of that day */
function refuseTakenNumbers(deps: Deps, squadId: string, rows: readonly RosterRow[]): void {
	const taken = new Set(dayOf(deps, squadId).members.map((member) => member.number))
	const twice = rows.filter((row) => taken.has(row.number))
	if (twice.length > 0)
		throw new Refusal(
			'squad.number-twice',
			'A number is on the board already.',
			twice.map((row) => ({
				path: `row ${row.row}, number`,
				message: `given ${row.number}, allowed: a number that is free`,
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
const nameOf = (player: RosterPlayer) => fullName(player)
/** To whom a consent on the roster is given, by what it is for; to nobody named where absent. */
const recipientOf: Partial<Record<Purpose, (team: string, player: RosterPlayer) => string>> = {
	'share-with-coach': (team) => team,
	email: (_, player) => player.guardian?.email ?? player.guardian?.name ?? nameOf(player),
	'share-with-care': (team) => team,
	laboratory: (team) => team,
}
function consentOf(
	purpose: Purpose,
	player: RosterPlayer,
	team: string,
	day: string,
	deps: Deps,
	adultYears: number,
): NewConsent {
	const today = dayHere(deps.now())
	// a player of age consents alone, whoever else stands in the list
	const grantor: NewConsent['grantor'] =
		player.guardian && ageYears(player.birthDate, day) < adultYears
			? { name: player.guardian.name, relation: 'guardian' }
			: { name: nameOf(player), relation: 'player' }
	return {
		purpose,
		recipient: recipientOf[purpose]?.(team, player) ?? '',
		decision: 'permit',
		grantor,
		method: 'written',
		textVersion: 'roster form',
		given: day < today ? day : today,
	}
}
