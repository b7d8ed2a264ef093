/** How long records are kept: what is due, what is on hold, what was destroyed and by whom. */

import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { keepUntil, type RegisterLine } from '../../../shared/desk/records/retention.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { BackupPlace } from '../../store/backup-list.ts'
import type { Store } from '../../store/store.ts'
import { plain } from '../players/names.ts'
import { dropTypedAbout } from '../players/typed.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { openerOf } from '../records/open.ts'
import { Refusal } from '../records/refusal.ts'
import { forget } from '../records/remember.ts'
import { pagesNaming } from '../visits/given.ts'
import { damageHere, inWords } from './backups.ts'

type PlayersHere = Pick<Memory, 'players' | 'clinic' | 'holds'>
interface Clock {
	playerId: string
	name: string
	birthDate: string
	/** ISO 8601 days */
	firstEntry: string
	lastEntry: string
	keepUntil: string
}
/** The clock of each shown player; merged records count together, the last entry of any of them. */
function clocks({ players, clinic }: PlayersHere, { store }: Deps): Clock[] {
	const entries = store.lastEntries([...players.byId.keys()])
	return players.ordered().flatMap(({ card }) => {
		const { playerId, birthDate } = card
		const times = players.idsOf(playerId).flatMap((id) => entries.get(id) ?? [])
		if (times.length === 0) return []
		const firstEntry = dayOf(times.map((time) => time.first).sort()[0])
		const lastEntry = dayOf(
			times
				.map((time) => time.last)
				.sort()
				.at(-1),
		)
		return [
			{
				playerId,
				name: fullName(card),
				birthDate,
				firstEntry,
				lastEntry,
				keepUntil: keepUntil(birthDate, lastEntry, clinic.settings.retention),
			},
		]
	})
}
const dayOf = (at: string | undefined): string => at?.slice(0, 10) ?? ''
const isHeld = ({ players, holds }: PlayersHere, playerId: string): boolean =>
	players.idsOf(playerId).some((id) => holds.has(id))
/** Whose records need not be kept any longer on a day, and whose are on hold. */
export function retentionDue(
	memory: PlayersHere,
	deps: Deps,
	{ on }: InputOf<'retention.due'>,
): OutputOf<'retention.due'> {
	const { players, clinic, holds } = memory
	const day = on ?? dayHere(deps.now())
	const { name, source } = clinic.settings.retention
	return {
		rule: `${name}. ${source}`,
		due: clocks(memory, deps)
			.filter((clock) => clock.keepUntil <= day && !isHeld(memory, clock.playerId))
			.map(({ firstEntry: _, ...shown }) => shown),
		held: [...holds.byPlayer].flatMap(([playerId, { reason }]) =>
			players.byId.has(playerId) ? [{ playerId, name: players.nameOf(playerId), reason }] : [],
		),
	}
}
/** Puts a record on hold or releases it. @throws Refusal where nothing would change */
export function hold(
	{ players, holds }: Pick<Memory, 'players' | 'holds'>,
	{ keep }: Deps,
	{ playerId, reason, on }: InputOf<'retention.hold'>,
): OutputOf<'retention.hold'> {
	players.entry(playerId)
	const known = holds.byPlayer.get(playerId)
	if (on === (known !== undefined))
		throw new Refusal(
			on ? 'backups.already-on-hold' : 'backups.not-on-hold',
			on ? 'This record is on hold already.' : 'This record is not on hold.',
		)
	keep({
		kind: 'hold',
		follows: known?.recordId,
		value: { playerId, reason, on },
		about: playerId,
	})
	return {}
}
/**
 * Removes every record about a player for good. The name must be typed: a wrong line cannot be
 * destroyed by a slip.
 */
export async function destroy(
	memory: Memory,
	deps: Deps,
	{ playerId, reason, name, alsoBackups }: InputOf<'retention.destroy'>,
): Promise<OutputOf<'retention.destroy'>> {
	const { store, keep } = deps
	const { players, drafts, people, clinic } = memory
	// a daily backup that is being written now must stand in the list of those that hold the record
	await store.backupsDone()
	const clock = mustBeDestroyable(memory, deps, playerId, name)
	const ids = players.idsOf(playerId)
	const recordIds = [...ids.flatMap((id) => store.recordsAbout(id)), ...pagesNaming(deps, ids)]
	const draftIds = drafts.of(ids).map(([draftId]) => draftId)
	const line: RegisterLine = {
		playerId,
		name: players.nameOf(playerId),
		from: clock.firstEntry,
		to: clock.lastEntry,
		destroyedOn: dayHere(deps.now()),
		by: people.acts().name,
		rule: clinic.settings.retention.name,
		reason,
		recordIds,
	}
	store.destroy(recordIds, draftIds, () => {
		keep({ kind: 'register', value: line })
		dropTypedAbout(store, new Set(ids))
	})
	store.noteDestroyed(recordIds)
	for (const draftId of draftIds) drafts.drop(draftId)
	forget(memory, new Set(recordIds))
	return { records: recordIds.length, ...(await clearBackups(deps, alsoBackups)) }
}
type StillHolding = Pick<OutputOf<'retention.destroy'>, 'backupsThatStillHold' | 'says'>

/** Takes away the older backups of this PC, once a good newer one stands, where that is wanted. */
async function clearBackups(deps: Deps, wanted: boolean): Promise<StillHolding> {
	const { store } = deps
	const older = store.backups()
	const all = older.map(({ file }) => file)
	if (!wanted) return { backupsThatStillHold: all, says: [] }
	const mine = older.filter(({ madeBy }) => madeBy === 'this-pc')
	const others = older.filter(({ madeBy }) => madeBy !== 'this-pc')
	const kept = mine.length > 0 ? await newerOne(deps) : { says: [] }
	if (kept.says.length > 0) return { backupsThatStillHold: all, says: [...kept.says, keptWords] }
	for (const { folder, file } of mine)
		if (file !== kept.file) rmSync(join(folder, file), { force: true })
	const leftovers = store.removeLeftovers()
	if (mine.length + leftovers.length > 0)
		store.audit({ function: 'destroy', objectRef: `backups:${mine.length + leftovers.length}` })
	return {
		backupsThatStillHold: others.map(({ file }) => file),
		says: [
			...(leftovers.length > 0
				? [`Removed too, as they may have held it: ${leftovers.join(', ')}.`]
				: []),
			...others.map(remainsWords),
		],
	}
}
/**
 * The new copy is made and checked first: there is a good one at every moment.
 * @returns its file, and why the older ones must stay: a sentence each
 */
async function newerOne({ store }: Deps): Promise<{ file?: string; says: string[] }> {
	try {
		const made = await inWords(() => store.backup('after-destruction'), store.backupFolder)
		return { file: made.file, says: made.damage.map(damageHere) }
	} catch (error) {
		// what was destroyed is destroyed: only its backups remain
		if (error instanceof Refusal) return { says: [error.message] }
		throw error
	}
}
const keptWords =
	'The record was destroyed here. The older backups were kept and still hold it: put right what ' +
	'is said above, and delete them then.'
const remainsWords = ({ file, folder, madeBy }: BackupPlace): string =>
	madeBy === 'other'
		? `${file} in ${folder} was made by another PC and may still hold it: destroy it there too.`
		: `${file} in ${folder} was made by an earlier version, which did not write down by which PC. ` +
			'It may still hold it: delete it by hand where it is of this PC.'
/** @param name as it was typed. @throws Refusal in words; nothing is destroyed then */
function mustBeDestroyable(memory: PlayersHere, deps: Deps, playerId: string, name: string): Clock {
	const { players, clinic } = memory
	const whole = players.nameOf(playerId)
	const today = dayHere(deps.now())
	if (plain(name.trim()) !== plain(whole))
		throw new Refusal(
			'backups.other-name',
			'The name does not match this player. Nothing was destroyed.',
			[{ path: 'name', message: `given "${name}", allowed: ${whole}` }],
		)
	if (players.mergedAway(playerId))
		throw new Refusal(
			'backups.merged-into-another',
			'This record was merged into another player. Undo the merge first.',
		)
	if (isHeld(memory, playerId))
		throw new Refusal(
			'backups.on-hold',
			'This record is on hold (complaint, claim or dispute). Release the hold first.',
		)
	refuseUnreadHold(memory, deps, playerId)
	const clock = clocks(memory, deps).find((found) => found.playerId === playerId)
	if (!clock || clock.keepUntil > today)
		throw new Refusal(
			'backups.to-be-kept',
			`This record is to be kept until ${clock?.keepUntil ?? 'a day that cannot be computed'} ` +
				`by the rule of the clinic (${clinic.settings.retention.name}). Nothing was destroyed.`,
		)
	return clock
}
/** @throws Refusal where a hold cannot be read: it may be in force */
function refuseUnreadHold({ players }: PlayersHere, { openAbout }: Deps, playerId: string): void {
	const [unread] = players.idsOf(playerId).flatMap((id) => openAbout('hold', id).unread)
	if (unread !== undefined)
		throw new Refusal(
			'backups.unreadable-hold',
			`A hold on this record cannot be read. Nothing was destroyed. ${unread}`,
		)
}
/** What was destroyed: a line for each player, without the ids. */
export function register({ openAll }: Deps): OutputOf<'retention.register'> {
	return { lines: openAll('register').records.map(({ value: { recordIds: _, ...line } }) => line) }
}
/** What was destroyed, with the ids of all records that went. */
export const destroyedLines = (store: Store): RegisterLine[] =>
	openerOf(store)
		.openAll('register')
		.records.map((record) => record.value)
