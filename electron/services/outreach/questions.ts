/** What two places recorded differently, as far as nobody answered it. */

import type { OutputOf } from '../../../shared/contract.ts'
import {
	contestedConsents,
	type Fork,
	forksOf,
	joinFields,
} from '../../../shared/desk/outreach/heads.ts'
import { type Purpose, purposes } from '../../../shared/desk/records/consent.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Store } from '../../store/store.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import type { Opened } from '../records/open.ts'
import { joinedOf, versionsAbout } from './versions.ts'

/** An open question, with the installation that wrote each of its records. */
export type OpenQuestion = OutputOf<'outreach.list'>['questions'][number] & {
	origins: ReadonlyMap<string, string>
}
/** What reading versions takes: whoever works is told of those that cannot be read. */
type Reads = Pick<Deps, 'openAbout' | 'openAll' | 'store'>
/** Whom a question is about, and what was answered before. */
interface Asked {
	deps: Reads
	joined: ReadonlySet<string>
	playerId: string
	name: string
}
/** Kinds of the clinic as a whole, of which one version counts. */
const clinicWide = ['clinic', 'settings', 'shelf', 'protocol'] as const
const kindWords: Record<string, string> = {
	clinic: 'The letterhead',
	settings: 'The settings of the records',
	shelf: 'The shelf',
	protocol: 'The protocol',
	season: 'The season',
	visit: 'The amended visit',
}
/** The questions about these players and about the clinic. */
export function openQuestions(deps: Reads, playerIds: readonly string[]): OpenQuestion[] {
	const { store } = deps
	const joined = joinedOf(deps)
	const ofClinic = forksOf(store.load(clinicWide).records, joined)
	return [
		...playerIds.flatMap((playerId) => questionsAbout(deps, joined, playerId)),
		...ofClinic.map((fork) => forkQuestion(store, fork, '')),
	]
}
function questionsAbout(
	deps: Reads,
	joined: ReadonlySet<string>,
	playerId: string,
): OpenQuestion[] {
	const { store } = deps
	const line = versionsAbout(deps, 'player', playerId)
	const newest = line.at(-1)
	const name = newest ? fullName(newest.value.player) : 'a player'
	const asked = { deps, joined, playerId, name }
	const forks = forksOf(
		[...versionsAbout(deps, 'season', playerId), ...versionsAbout(deps, 'visit', playerId)],
		joined,
	)
	return [
		...detailsQuestions(asked, line),
		...consentQuestions(asked),
		...forks.map((fork) => forkQuestion(store, fork, name, playerId)),
	]
}
/** What of a player's details decides whom something may go to, and by which address. */
const ofSending = new Map([
	['guardian', 'The guardian'],
	['email', 'The e-mail address'],
	['birthDate', 'The birth date'],
])
/**
 * Why nothing may be sent to a recipient on a player's record: two places say otherwise whom or
 * where. Undefined where nothing is open.
 * @param role whether the recipient is the player, the guardian, or another contact
 */
export function contestedBlock(
	{ players, outreach }: Pick<Memory, 'outreach' | 'players'>,
	deps: Pick<Deps, 'openAbout'>,
	playerId: string,
	role: string,
): string | undefined {
	const concerns = role === 'player' ? ['email', 'birthDate'] : [role, 'birthDate']
	const open = players.idsOf(playerId).flatMap((id) => {
		const { questions } = joinFields(
			versionsAbout(deps, 'player', id),
			({ player }) => player,
			outreach.joined,
		)
		return questions.map(({ field }) => field).filter((field) => concerns.includes(field))
	})
	const what = ofSending.get(open[0] ?? '')
	return (
		what &&
		`${what} of ${players.nameOf(playerId)} was changed in two places, and nobody has said yet ` +
			'which counts. Answer it under Outreach first.'
	)
}
function detailsQuestions(
	{ deps, joined, playerId, name }: Asked,
	line: readonly Opened<'player'>[],
): OpenQuestion[] {
	const { questions } = joinFields(line, ({ player }) => player, joined)
	if (questions.length === 0) return []
	return [
		{
			what: 'details',
			id: playerId,
			playerId,
			name,
			says: `Details of ${name} were changed in two places.`,
			origins: originsOf(questions.flatMap(({ values }) => values)),
			fields: questions.map(({ field, values }) => ({
				field,
				values: values.map(({ record, at, origin, value }) => ({
					record,
					at,
					place: placeOf(deps.store, origin),
					shown: shown(value),
				})),
			})),
		},
	]
}
function consentQuestions({ deps, joined, playerId, name }: Asked): OpenQuestion[] {
	const consents = versionsAbout(deps, 'consent', playerId)
	return contestedConsents(consents, joined).map(({ standing, purpose, recipient, records }) => ({
		what: 'consent',
		id: standing,
		playerId,
		name,
		says:
			`Consent of ${name} to ${purposes[purpose as Purpose]?.says ?? purpose}` +
			`${recipient ? ` for ${recipient}` : ''} was recorded ` +
			'differently in two places. The stricter one holds until you decide.',
		origins: originsOf(records),
		fields: [
			{
				field: purpose,
				values: records.map(({ record, at, origin, decision }) => ({
					record,
					at,
					place: placeOf(deps.store, origin),
					shown: decision,
				})),
			},
		],
	}))
}
function forkQuestion(store: Store, fork: Fork, name: string, playerId?: string): OpenQuestion {
	const what = `${kindWords[fork.kind] ?? fork.kind}${name ? ` of ${name}` : ''}`
	return {
		what: 'version',
		id: fork.after,
		...present({ playerId }),
		name,
		says: `${what} was changed in two places. Both are kept; choose which one counts.`,
		origins: originsOf(fork.records),
		fields: [
			{
				field: fork.kind,
				values: fork.records.map(({ record, at, origin }) => ({
					record,
					at,
					place: placeOf(store, origin),
					shown: `version of ${at.slice(0, 16).replace('T', ' ')}`,
				})),
			},
		],
	}
}
const originsOf = (records: readonly { record: string; origin: string }[]) =>
	new Map(records.map(({ record, origin }) => [record, origin]))
const placeOf = (store: Store, origin: string) =>
	origin === store.origin ? 'here' : `away (${origin.slice(0, 6) || 'earlier version'})`
function shown(value: unknown): string {
	if (value === null || value === undefined) return 'nothing'
	if (typeof value !== 'object') return String(value)
	return Object.values(value)
		.filter((part) => part !== null)
		.join(', ')
}
