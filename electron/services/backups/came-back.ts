/** The list after a restore: shown in words, and decided line by line by the owner. */
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	type CameBack,
	type CameBackLine,
	type Choice,
	decideLine,
	openLines,
	type Subject,
} from '../../../shared/desk/backups/came-back.ts'
import {
	asksPassphrase,
	choiceWords,
	type Known,
	lineWords,
} from '../../../shared/desk/backups/words.ts'
import type { Consent } from '../../../shared/desk/records/consent.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { recordConsent } from '../people/consents.ts'
import { retirePerson, savePerson } from '../people/people.ts'
import type { Session } from '../people/session.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { readRecord } from '../records/open.ts'
import { Refusal } from '../records/refusal.ts'
import { listRecord } from './guarded.ts'
import { destroyedLines } from './retention.ts'

/** The lists that wait, and the last one that was decided where none waits. */
export function cameBack(memory: Memory, deps: Deps): OutputOf<'backups.cameBack'> {
	const waiting = memory.restored.open()
	const shown = waiting.length > 0 ? waiting : memory.restored.lists.all().slice(-1)
	return { lists: shown.reverse().map((list) => shownList(memory, deps, list)) }
}
function shownList(memory: Memory, deps: Deps, { lines, ...list }: CameBack) {
	return {
		...list,
		open: openLines({ lines }).length,
		lines: lines.map(({ lineId, subject, allowed, decided }) => ({
			lineId,
			what: subject.what,
			says: lineWords(subject, knownOf(memory, deps, subject)),
			choices: allowed.map((choice) => ({
				choice,
				says: choiceWords(subject, choice),
				asksPassphrase: asksPassphrase(subject, choice),
			})),
			...present({ decided }),
		})),
	}
}
function knownOf(memory: Memory, deps: Deps, subject: Subject): Known {
	const { people, players, outbox } = memory
	const time = (at: string) => at.slice(0, 16).replace('T', ' ')
	const playerId = 'playerId' in subject ? subject.playerId : undefined
	const player =
		playerId !== undefined && players.byId.has(playerId) ? players.nameOf(playerId) : undefined
	switch (subject.what) {
		case 'person':
		case 'passphrase':
			return { time, person: people.byId.get(subject.personId) }
		case 'consent':
			return { time, player, consent: consentOf(deps, subject) }
		case 'destroyed':
			return { time, destroyed: registeredName(deps, subject.playerId) }
		case 'sending':
		case 'to-check':
			return { time, player, item: outbox.items.get(subject.itemId) }
	}
}
const registeredName = ({ store }: Deps, playerId: string | undefined): string | undefined =>
	destroyedLines(store).find((line) => line.playerId === playerId)?.name

/** The newest version of the consent that a line names; undefined where it was destroyed. */
function consentOf(
	{ store }: Deps,
	{ playerId, consentId }: Extract<Subject, { what: 'consent' }>,
): Consent | undefined {
	const versions = store.cardsOf('consent', consentId)
	const newest = versions.at(-1)?.record
	if (newest === undefined || !store.recordsAbout(playerId).includes(newest)) return undefined
	return readConsent(store, newest)
}

/** Undefined where it is damaged, or this version cannot read it. */
function readConsent(store: Deps['store'], id: string): Consent | undefined {
	try {
		const reading = readRecord('consent', store.read(id))
		return reading.state === 'read' ? reading.value : undefined
	} catch {
		return undefined
	}
}
/**
 * Decides some lines of a list, one after another.
 * @throws Refusal where one of them cannot go that way; those before it are decided then
 */
export async function decide(
	memory: Memory,
	deps: Deps,
	session: Session,
	{ restoreId, decisions }: InputOf<'backups.decide'>,
): Promise<OutputOf<'backups.decide'>> {
	const { name: by } = memory.people.acts()
	const done: { lineId: string; choice: Choice }[] = []
	const decided = (list: CameBack) =>
		done.reduce(
			(so, { lineId, choice }) =>
				decideLine(so, lineId, { choice, by, at: deps.now().toISOString() }),
			list,
		)
	try {
		for (const { lineId, choice, passphrase } of decisions) {
			const list = listOf(memory, restoreId)
			done.push({ lineId, choice })
			inWords(() => decided(list))
			const line = list.lines.find((known) => known.lineId === lineId)
			if (line) await act(memory, deps, session, line, choice, passphrase)
		}
	} catch (error) {
		done.pop()
		throw error
	} finally {
		if (done.length > 0) keepList(memory, deps, decided(listOf(memory, restoreId)))
	}
	return cameBack(memory, deps)
}
function listOf({ restored }: Pick<Memory, 'restored'>, restoreId: string): CameBack {
	const list = restored.lists.get(restoreId)
	if (!list)
		throw new Refusal(
			'backups.list-is-gone',
			'This list is not in the records any more. Open it again.',
		)
	return list
}
function keepList({ restored }: Pick<Memory, 'restored'>, deps: Deps, list: CameBack): void {
	const follows = restored.lists.recordOf(list.restoreId)
	deps.keep(listRecord(list, follows))
}
function inWords<T>(work: () => T): T {
	try {
		return work()
	} catch (error) {
		if (error instanceof RangeError) throw new Refusal('backups.cannot-go-that-way', error.message)
		throw error
	}
}
/** What stands already needs no act; anything else is done by the same call as ever. */
async function act(
	memory: Memory,
	deps: Deps,
	session: Session,
	{ subject, allowed }: CameBackLine,
	choice: Choice,
	passphrase: string | undefined,
): Promise<void> {
	if (choice === allowed[0]) return
	if (subject.what === 'consent') return giveAnew(memory, deps, subject)
	if (subject.what !== 'person') return
	const { personId, change, was } = subject
	if (choice === 'take-off' || change === 'added') {
		const reason = 'decided after a restore'
		retirePerson(memory, deps, session, { personId, reason })
		return
	}
	const { name, registration, role } = was ?? memory.people.acts()
	if (role === 'owner')
		throw new Refusal('backups.owner-by-letterhead', 'The owner is changed by the letterhead.')
	await savePerson(memory, deps, session, {
		personId,
		name,
		registration,
		role,
		...present({ passphrase }),
	})
}
/** The consent as the backup has it, given once more: the withdrawal stays in the records. */
function giveAnew(
	memory: Memory,
	deps: Deps,
	{ playerId, wasRecord }: Extract<Subject, { what: 'consent' }>,
): void {
	const read =
		wasRecord !== undefined && deps.store.has(wasRecord)
			? readConsent(deps.store, wasRecord)
			: undefined
	if (!read)
		throw new Refusal('backups.consent-is-gone', 'This consent is not in the records any more.')
	const { consentId: _, recordedAt: __, withdrawn: ___, withdrawnBy: ____, ...consent } = read
	recordConsent(memory, deps, { playerId, consent })
}
