/**
 * A screening day: roster, marks of where each player is, the board, reports after signing, and the
 * two summaries. Every entry is about one player, so that it travels and ends with the player.
 */
import { randomUUID } from 'node:crypto'
import { renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Papa from 'papaparse'
import { draftContentSchema, type InputOf, type OutputOf } from '../../../shared/contract.ts'
import type { NewConsent, Purpose } from '../../../shared/desk/records/consent.ts'
import {
	type BoardInput,
	boardRow,
	doubledNumbers,
	type Presence,
} from '../../../shared/desk/squad/board.ts'
import { type Roster, rosterFromCells } from '../../../shared/desk/squad/roster.ts'
import { type StationId, stations } from '../../../shared/desk/squad/stations.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { clubFields } from '../../../shared/engine/report/club.ts'
import { guardianSummary } from '../../../shared/engine/report/guardian.ts'
import { type SquadMember, squadForClinician } from '../../../shared/engine/report/squad.ts'
import { squadForClub } from '../../../shared/engine/report/squad-for-club.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { folderToWrite, writeTrouble } from '../clinic/places.ts'
import { checkConsent, recordConsent } from '../people/consents.ts'
import { likeness } from '../players/names.ts'
import { savePlayer } from '../players/players.ts'
import { type Deps, type DraftValue, Refusal, type State } from '../records/state.ts'
import { pdfOf } from '../visits/drawing.ts'
import { amendmentThen, openReport, openVisit, visitsOf } from '../visits/visits.ts'

interface MemberValue {
	what: 'member'
	squadId: string
	team: string
	day: string
	playerId: string
	number: string
}
interface MarkValue {
	what: 'mark'
	squadId: string
	playerId: string
	presence: Presence
	at?: StationId | undefined
	reason?: string | undefined
	time: string
}
interface Day {
	squadId: string
	team: string
	day: string
	members: MemberValue[]
	marks: Map<string, MarkValue>
}
interface Run {
	running: boolean
	done: number
	total: number
	stop: boolean
	files: number
	failed: string[]
	said: string
}
const runs = new WeakMap<State, Map<string, Run>>()
const runsOf = (state: State): Map<string, Run> => {
	const found = runs.get(state) ?? new Map<string, Run>()
	runs.set(state, found)
	return found
}
const today = (deps: Deps): string => dayHere(deps.now())
const earlierOf = (a: string, b: string): string => [a, b].sort()[0] ?? a
const longestChars = 2_000_000
/** Players whose pages are drawn at the same time: as many as there are drawing threads. */
const drawnAtOnce = 2

function days({ store }: Deps): Map<string, Day> {
	const found = new Map<string, Day>()
	const values = store
		.load(['squad'])
		.records.map((record) => record.value as MemberValue | MarkValue)
	for (const value of values)
		if (value.what === 'member') {
			const day = found.get(value.squadId) ?? {
				squadId: value.squadId,
				team: value.team,
				day: value.day,
				members: [],
				marks: new Map<string, MarkValue>(),
			}
			day.members = [...day.members.filter((other) => other.playerId !== value.playerId), value]
			found.set(value.squadId, day)
		}
	for (const value of values)
		if (value.what === 'mark') found.get(value.squadId)?.marks.set(value.playerId, value)
	return found
}
function dayOf(deps: Deps, squadId: string): Day {
	const day = days(deps).get(squadId)
	if (!day) throw new Refusal('This screening day is not in the records.')
	return day
}
export function listSquads(deps: Deps): OutputOf<'squad.list'> {
	return {
		days: [...days(deps).values()]
			.sort((a, b) => (a.day < b.day ? 1 : -1))
			.map(({ squadId, team, day, members }) => ({ squadId, team, day, players: members.length })),
	}
}
function rosterOf(state: State, text: string, team: string, day: string): Roster {
	if (text.length > longestChars)
		return {
			rows: [],
			problems: [
				{
					row: 1,
					column: '(file)',
					message: `too large, given ${text.length} characters, allowed: ${longestChars} or fewer`,
				},
			],
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
				message: 'quotation marks do not close, given an open one, allowed: a closing one',
			})),
		}
	return rosterFromCells(parsed.data, team, day, state.settings.ages.ownConsentYears)
}
/** Reads a roster and changes nothing: players that are on record already are pointed out. */
export function previewRoster(
	state: State,
	{ text, team, day }: InputOf<'squad.previewRoster'>,
): OutputOf<'squad.previewRoster'> {
	const { rows, problems } = rosterOf(state, text, team, day)
	return {
		problems,
		rows: rows.map(({ row, number, player, consents }) => ({
			row,
			number,
			name: `${player.givenName} ${player.familyName}`,
			birthDate: player.birthDate,
			...(player.guardian ? { guardian: player.guardian.name } : {}),
			consents,
			known: knownAs(state, player),
		})),
	}
}
function knownAs(state: State, player: Roster['rows'][number]['player']) {
	return state
		.ordered()
		.flatMap(({ card }) => {
			const why = likeness({ ...card, ...player, playerId: '', openDraft: false }, card)
			return why
				? [
						{
							playerId: card.playerId,
							name: `${card.givenName} ${card.familyName}`,
							birthDate: card.birthDate,
							why,
						},
					]
				: []
		})
		.slice(0, 5)
}
/**
 * Takes the good rows in. `same` says for a row which player on record it is; where one is likely
 * and nothing is said, it is refused.
 */
export function createSquad(
	state: State,
	deps: Deps,
	{ text, team, day, same, squadId: into }: InputOf<'squad.create'>,
): OutputOf<'squad.create'> {
	const { rows, problems } = rosterOf(state, text, team, day)
	if (problems.length > 0)
		throw new Refusal(
			'The roster has rows that cannot stand. Correct them in the list first. Nothing was changed.',
			problems.map((problem) => ({
				path: `row ${problem.row}, ${problem.column}`,
				message: problem.message,
			})),
		)
	if (rows.length === 0) throw new Refusal('The roster has no players. Nothing was changed.')
	const open = rows.filter(
		({ row, player }) => same[String(row)] === undefined && knownAs(state, player).length > 0,
	)
	if (open.length > 0)
		throw new Refusal(
			'Some players may be on record already. Say for each whether it is the same person.',
			open.map(({ row, player }) => ({
				path: `row ${row}`,
				message:
					`not answered, given ${player.givenName} ${player.familyName}, allowed: a ` +
					'player on record, or new',
			})),
		)
	const squadId = into ?? randomUUID()
	const before = into === undefined ? undefined : dayOf(deps, into)
	const taken = new Set(before?.members.map((member) => member.number))
	const twice = rows.filter((row) => taken.has(row.number))
	if (twice.length > 0)
		throw new Refusal(
			'A number is on the board already.',
			twice.map((row) => ({
				path: `row ${row.row}, number`,
				message: `given ${row.number}, allowed: a number that is free`,
			})),
		)
	deps.store.together(() => {
		for (const { row, number, player, consents } of rows) {
			const answer = same[String(row)]
			const playerId =
				answer === undefined || answer === 'new'
					? savePlayer(state, deps, { player }).playerId
					: state.entry(answer).card.playerId
			for (const purpose of consents)
				recordConsent(state, deps, {
					playerId,
					consent: consentOf(
						purpose as Purpose,
						player,
						team,
						day,
						deps,
						state.settings.ages.adultYears,
					),
				})
			const value: MemberValue = { what: 'member', squadId, team, day, playerId, number }
			deps.store.append({ kind: 'squad', at: deps.now().toISOString(), value, about: playerId })
		}
	})
	return { squadId, players: rows.length }
}
const toWhom: Partial<
	Record<Purpose, (team: string, player: Roster['rows'][number]['player']) => string>
> = {
	'share-with-coach': (team) => team,
	email: (_, player) =>
		player.guardian?.email ?? player.guardian?.name ?? `${player.givenName} ${player.familyName}`,
	'share-with-care': (team) => team,
	laboratory: (team) => team,
}
function consentOf(
	purpose: Purpose,
	player: Roster['rows'][number]['player'],
	team: string,
	day: string,
	deps: Deps,
	adultYears: number,
): NewConsent {
	const given = earlierOf(day, today(deps))
	// a player of age consents alone, whoever else stands in the list
	return {
		purpose,
		recipient: toWhom[purpose]?.(team, player) ?? '',
		decision: 'permit',
		grantor:
			player.guardian && ageYears(player.birthDate, day) < adultYears
				? { name: player.guardian.name, relation: 'guardian' }
				: { name: `${player.givenName} ${player.familyName}`, relation: 'player' },
		method: 'written',
		textVersion: 'roster form',
		given,
	}
}
function inputOf(state: State, deps: Deps, day: Day, member: MemberValue): BoardInput | undefined {
	const entry = state.players.get(member.playerId)
	if (!entry) return undefined
	const mark = day.marks.get(member.playerId)
	const [draftId] = state.draftsOf(member.playerId)[0] ?? []
	const stored = draftId === undefined ? undefined : deps.store.draft(draftId)
	const content = stored
		? draftContentSchema.parse((stored.value as DraftValue).content)
		: undefined
	const signed = visitsOf(state, deps, member.playerId).find(
		(line) => line.card.visitDate === day.day && !line.inError,
	)?.card.visitId
	return {
		playerId: member.playerId,
		number: member.number,
		name: `${entry.card.givenName} ${entry.card.familyName}`,
		birthDate: entry.card.birthDate,
		presence: mark?.presence ?? 'expected',
		...(mark?.reason ? { reason: mark.reason } : {}),
		...(mark?.at ? { at: mark.at } : {}),
		...(mark ? { since: mark.time } : {}),
		...(content ? { draft: content.visit } : {}),
		...(signed ? { signedVisitId: signed } : {}),
		consentNoted: content?.decisions.consentNoted === true,
	}
}
export function openSquad(
	state: State,
	deps: Deps,
	{ squadId }: InputOf<'squad.open'>,
): OutputOf<'squad.open'> {
	const day = dayOf(deps, squadId)
	const rows = day.members
		.flatMap((member) => {
			const input = inputOf(state, deps, day, member)
			return input ? [boardRow(input)] : []
		})
		.sort((a, b) => Number(a.number) - Number(b.number))
	return {
		squadId,
		team: day.team,
		day: day.day,
		rows,
		doubled: doubledNumbers(rows),
		stations: stations.map(({ id, name }) => ({ id, name })),
	}
}
/** Where a player is now: append only, the last mark counts. */
export function markPlayer(
	deps: Deps,
	{ squadId, playerId, presence, at, reason }: InputOf<'squad.mark'>,
): OutputOf<'squad.mark'> {
	const day = dayOf(deps, squadId)
	if (!day.members.some((member) => member.playerId === playerId))
		throw new Refusal('This player is not on the board of this day.')
	if (presence === 'refused' && !reason)
		throw new Refusal('Say in a few words what was refused.', [
			{ path: 'reason', message: 'missing, given nothing, allowed: who refused, and what' },
		])
	const time = deps.now().toISOString()
	const value: MarkValue = {
		what: 'mark',
		squadId,
		playerId,
		presence,
		...(at ? { at } : {}),
		...(reason ? { reason } : {}),
		time,
	}
	deps.store.append({ kind: 'squad', at: time, value, about: playerId })
	return {}
}
const signedRows = (state: State, deps: Deps, squadId: string) =>
	openSquad(state, deps, { squadId }).rows.flatMap((row) =>
		row.signedVisitId ? [{ ...row, visitId: row.signedVisitId }] : [],
	)
/**
 * Writes the signed reports of the day into a folder, and for minors the guardian's page, two
 * players at a time. A file never holds a name in its name.
 */
export function startReports(
	state: State,
	deps: Deps,
	{ squadId, folder }: InputOf<'squad.reports'>,
): OutputOf<'squad.reports'> {
	folderToWrite(folder)
	if (runsOf(state).get(squadId)?.running)
		throw new Refusal('The reports of this day are being written. Wait, or cancel.')
	const rows = signedRows(state, deps, squadId)
	if (rows.length === 0)
		throw new Refusal('Nobody of this day is signed yet. Sign one by one from the board first.')
	const run: Run = {
		running: true,
		done: 0,
		total: rows.length,
		stop: false,
		files: 0,
		failed: [],
		said: '',
	}
	runsOf(state).set(squadId, run)
	const { day } = dayOf(deps, squadId)
	const waiting = [...rows]
	let stopped = ''
	const lane = async (): Promise<void> => {
		for (
			let row = waiting.shift();
			row !== undefined && !run.stop && deps.store.isOpen;
			row = waiting.shift()
		) {
			try {
				const written = await writeReports(state, deps, row, day, folder)
				run.files += written
			} catch (error) {
				const trouble = writeTrouble(error, folder, 'No half report')
				// one word for the folder, not the same one for each player
				if (trouble !== undefined) {
					run.stop = true
					stopped ||= trouble
					return
				}
				if (!(error instanceof Refusal)) {
					run.stop = true
					throw error
				}
				run.failed.push(`${row.name}: ${error.message}`)
			}
			run.done++
		}
	}
	void (async () => {
		try {
			const ended = await Promise.allSettled(Array.from({ length: drawnAtOnce }, lane))
			if (ended.some((result) => result.status === 'rejected')) throw new Error('not written')
			const whole = `${run.done} of ${run.total} players are written and whole`
			run.said = stopped
				? `Stopped: ${whole}. ${stopped}`
				: run.stop
					? `Cancelled. ${whole}.`
					: deps.store.isOpen
						? ''
						: 'The records were locked meanwhile. Unlock and start again: what is written stays.'
		} catch {
			run.said =
				`Stopped after ${run.done} of ${run.total} players: a report could not be ` +
				'made. Start again: what is written stays.'
		} finally {
			run.running = false
		}
	})()
	return { total: rows.length }
}
async function writeReports(
	state: State,
	deps: Deps,
	row: { visitId: string; number: string; name: string; playerId: string; birthDate: string },
	day: string,
	folder: string,
): Promise<number> {
	const signed = openVisit(deps, { visitId: row.visitId })
	const stem = `${day}-number-${row.number.padStart(3, '0')}`
	const documents: [string, Uint8Array][] = [
		[
			`${stem}-report.pdf`,
			Buffer.from(openReport(deps, { visitId: row.visitId }).base64, 'base64'),
		],
	]
	if (ageYears(row.birthDate, day) < state.settings.ages.adultYears)
		documents.push([
			`${stem}-page-2.pdf`,
			await deps.renderPdf(
				guardianSummary({
					visit: signed.visit,
					assessment: signed.assessment as Assessment,
					decisions: signed.decisions,
					clinic: signed.clinic,
					signedAt: signed.signedAt,
					signedOn: signed.signedOn,
					draft: false,
					...amendmentThen(deps, signed),
				}),
			),
		])
	for (const [name, bytes] of documents) {
		// whole or not there: a cancelled run and a full stick leave no half file
		const coming = join(folder, `${name}.writing`)
		try {
			writeFileSync(coming, bytes, { mode: 0o600 })
			renameSync(coming, join(folder, name))
		} catch (error) {
			rmSync(coming, { force: true })
			throw error
		}
	}
	deps.store.audit({
		function: 'export',
		playerId: row.playerId,
		objectRef: `report-file:number-${row.number}`,
		purpose: 'screening day',
	})
	return documents.length
}
export function reportsProgress(
	state: State,
	{ squadId }: InputOf<'squad.progress'>,
): OutputOf<'squad.progress'> {
	const run = runsOf(state).get(squadId)
	return run
		? {
				running: run.running,
				done: run.done,
				total: run.total,
				files: run.files,
				failed: run.failed,
				said: run.said,
			}
		: { running: false, done: 0, total: 0, files: 0, failed: [], said: '' }
}
export function cancelReports(
	state: State,
	{ squadId }: InputOf<'squad.cancel'>,
): OutputOf<'squad.cancel'> {
	const run = runsOf(state).get(squadId)
	if (run?.running) run.stop = true
	return { cancelled: run?.running === true }
}
/**
 * The club's version holds only players whose consent to the squad summary is in force now; the
 * clinician's holds all.
 */
export async function squadSummary(
	state: State,
	deps: Deps,
	{ squadId, version }: InputOf<'squad.summary'>,
): Promise<OutputOf<'squad.summary'>> {
	const { clinic } = state
	if (!clinic) throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
	const board = openSquad(state, deps, { squadId })
	const on = today(deps)
	const leftOut: string[] = []
	const signed = signedRows(state, deps, squadId)
	const club = () =>
		squadForClub(
			signed.flatMap((row) => {
				const answer = checkConsent(state, deps, row.playerId, 'squad-summary', '')
				if (!answer.inForce || answer.consentId === undefined) {
					leftOut.push(`${row.name}: ${answer.because}`)
					return []
				}
				const { visit, decisions } = openVisit(deps, { visitId: row.visitId })
				return [
					clubFields(
						visit,
						decisions,
						{
							id: answer.consentId.slice(0, 8),
							purpose: 'squad-club',
							decision: 'permit',
							given: earlierOf(board.day, on),
							...(answer.expires ? { until: answer.expires } : {}),
						},
						{ on, purpose: 'squad-club' },
					),
				]
			}),
			clinic,
			on,
			board.team,
		)
	const clinician = () =>
		squadForClinician(
			board.rows.flatMap((row): SquadMember[] => {
				if (row.signedVisitId) {
					const one = openVisit(deps, { visitId: row.signedVisitId })
					return [
						{
							visit: one.visit,
							assessment: one.assessment as Assessment,
							decisions: one.decisions,
						},
					]
				}
				if (row.state !== 'absent' && row.state !== 'refused') {
					leftOut.push(`${row.name}: not signed yet.`)
					return []
				}
				const visit = {
					format: 'lastwright-visit' as const,
					version: 1 as const,
					player: state.entry(row.playerId).player,
					visitDate: board.day,
					screening: {},
				}
				return [
					{
						visit,
						assessment: assess(visit, [], state.protocol),
						decisions: noDecisions,
						state: row.state,
					},
				]
			}),
			clinic,
			on,
			board.team,
		)
	const bytes = await deps.renderPdf(version === 'club' ? club() : clinician())
	return { pdf: pdfOf(bytes, `squad-${board.day}-${version}.pdf`), leftOut }
}
