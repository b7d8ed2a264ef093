/** Backups as the screens ask for them: listed, made, looked into, made once a day. */

import { statSync } from 'node:fs'
import { isAbsolute, join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { damagedHere, damagedThere } from '../../../shared/desk/backups/words.ts'
import { backupAgeDays } from '../../../shared/desk/records/keep.ts'
import { dayOfMoment } from '../../../shared/desk/workplace/local-day.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { BackupRefused } from '../../store/backup-file.ts'
import type { BackupPlace } from '../../store/backup-list.ts'
import type { BackupPreview, DamageHere } from '../../store/backups.ts'
import { tooFewHandles } from '../../store/disk.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { readRecord } from '../records/open.ts'
import { Refusal } from '../records/refusal.ts'

const dayMs = 86_400_000
const notWritable = ['EACCES', 'EROFS', 'EPERM', 'ENOENT', 'ENOTDIR', 'EEXIST']
/** most names that a preview lists on either side */
const mostNames = 50
const bytesOf = (file: string): number => {
	try {
		return statSync(file).size
	} catch {
		return 0
	}
}

/**
 * What is said of the newest backup's age in days; empty where all is well.
 * @param backups of this PC, the newest first
 */
function nagWords(
	backups: readonly BackupPlace[],
	ageDays: number | undefined,
	warnDays: number,
): string {
	if (backups.length === 0)
		return 'There is no backup yet. Make one now, best on a stick or another disk.'
	if (ageDays === undefined)
		return 'The newest backup is dated after today. Check the date of this PC.'
	if (backups[0]?.damaged)
		return (
			'A record was damaged already when the newest backup was made. Older backups are kept: ' +
			'look into the newest one that is not marked as damaged.'
		)
	const days = ageDays === 1 ? '1 day' : `${ageDays} days`
	return ageDays >= warnDays ? `The newest backup is ${days} old. Make one now.` : ''
}
/** The backups there are, the newest first, and whether it is time for another one. */
export function listBackups(
	{ clinic }: Pick<Memory, 'clinic'>,
	{ store, now }: Deps,
): OutputOf<'backups.list'> {
	const backups = store.backups()
	const at = now().toISOString()
	const mine = backups.filter((backup) => backup.madeBy !== 'other')
	// one that is dated after now says nothing of how old the others are
	const dated = mine.filter((backup) => backup.at <= at)
	const ageDays = backupAgeDays(dated[0]?.at, at)
	return {
		folder: store.backupFolder,
		...present({ ageDays }),
		nag: nagWords(dated.length > 0 ? dated : mine, ageDays, clinic.settings.backupWarnDays),
		backups: backups.map((backup) => ({
			...backup,
			bytes: bytesOf(join(backup.folder, backup.file)),
		})),
	}
}
function mustBeWholePath(folder: string): void {
	if (isAbsolute(folder)) return
	throw new Refusal('places.not-a-whole-path', 'The folder is not a whole path.', [
		{ path: 'folder', message: `given ${folder}, allowed: a whole path such as /media/stick` },
	])
}
/** Makes a backup in a folder, or where they usually go. @throws Refusal in words */
export async function makeBackup(
	{ store }: Deps,
	{ folder }: InputOf<'backups.make'>,
): Promise<OutputOf<'backups.make'>> {
	if (folder !== undefined) mustBeWholePath(folder)
	const where = folder ?? store.backupFolder
	const { damage, ...made } = await inWords(() => store.backup('asked', where), where)
	store.audit({ function: 'backup', objectRef: made.file })
	return {
		...made,
		folder: where,
		madeBy: 'this-pc',
		bytes: bytesOf(join(where, made.file)),
		says: damage.map(damageHere),
	}
}
/** What a folder or file refuses is said in words. */
export async function inWords<T>(work: () => Promise<T>, where: string): Promise<T> {
	try {
		return await work()
	} catch (error) {
		if (error instanceof BackupRefused) throw new Refusal(error.why, error.message)
		const handles = tooFewHandles(error)
		if (handles !== undefined) throw new Refusal('backups.folder-refused', handles)
		const { code = '', errstr = '' } = error as { code?: string; errstr?: string }
		if (code === 'ENOSPC' || /full/.test(errstr))
			throw new Refusal(
				'places.no-room',
				`There is no room in ${where}. Free some space or use another stick. No half backup was ` +
					'left there.',
			)
		if (notWritable.includes(code) || /readonly|unable to open/.test(errstr))
			throw new Refusal(
				'places.not-writable',
				`The folder ${where} cannot be written to. Check that the stick is plugged in and not ` +
					'write-protected, or choose another folder.',
			)
		throw error
	}
}
/** Sets the folder that backups go to. @throws Refusal in words */
export async function setBackupFolder(
	{ store, saveSettings }: Deps,
	{ folder }: InputOf<'backups.setFolder'>,
): Promise<OutputOf<'backups.setFolder'>> {
	mustBeWholePath(folder)
	// a folder counts once a checked backup stands in it
	await inWords(() => store.backup('asked', folder), folder)
	store.backupFolder = folder
	saveSettings({ backupFolder: folder })
	store.audit({ function: 'update', objectRef: 'settings:backup-folder' })
	return {}
}
/** A name of the list, or a whole path. */
export function fileOf({ store }: Pick<Deps, 'store'>, given: string): string {
	if (isAbsolute(given)) return given
	const known = store.backups().find(({ file }) => file === given)
	if (!known)
		throw new Refusal('backups.not-in-the-list', 'This backup is not in the list.', [
			{ path: 'file', message: `given ${given}, allowed: a file of the list, or a whole path` },
		])
	return join(known.folder, known.file)
}
/**
 * What a backup holds, what of it is damaged, and which players stand only now or only then.
 * @throws Refusal
 */
export async function previewBackup(
	memory: Pick<Memory, 'players'>,
	deps: Deps,
	{ file }: InputOf<'backups.preview'>,
): Promise<OutputOf<'backups.preview'>> {
	const held = await lookInto(deps, fileOf(deps, file))
	const { records, visits, lastAt, sameClinic, players = [], damage = [] } = held
	const then = new Map(
		players.flatMap((record) => {
			const reading = readRecord('player', record)
			if (reading.state !== 'read') return []
			return [[reading.value.playerId, fullName(reading.value.player)] as const]
		}),
	)
	const now = new Map(
		[...memory.players.byId.values()].map(({ card }) => [card.playerId, fullName(card)]),
	)
	return {
		records,
		visits,
		...present({ lastAt, sameClinic }),
		...(sameClinic === undefined ? {} : { players: then.size }),
		onlyNow: sameClinic ? namesOnlyIn(now, then) : [],
		onlyThen: sameClinic ? namesOnlyIn(then, now) : [],
		damaged: damage.map((one) => damagedThere(one, dayOfMoment(one.at))),
	}
}
const namesOnlyIn = (here: ReadonlyMap<string, string>, there: ReadonlyMap<string, string>) =>
	[...here]
		.filter(([id]) => !there.has(id))
		.map(([, name]) => name)
		.slice(0, mostNames)
/** @throws Refusal where it is no whole backup */
export async function lookInto(
	{ store }: Pick<Deps, 'store'>,
	file: string,
): Promise<BackupPreview> {
	try {
		return await store.preview(file)
	} catch (error) {
		if (error instanceof BackupRefused) throw new Refusal(error.why, error.message)
		throw error
	}
}
/**
 * Once a day, after unlocking, behind the person's work.
 * @returns what to warn of, a sentence each; empty where all is well
 */
export async function dailyBackup({ store, now }: Deps): Promise<string[]> {
	const at = now().toISOString()
	const newest = store
		.backups()
		.find((made) => made.madeBy !== 'other' && made.reason === 'daily' && made.at <= at)
	if (newest && now().getTime() - Date.parse(newest.at) < dayMs) return []
	try {
		const { file, damage } = await inWords(() => store.backup('daily'), store.backupFolder)
		if (store.isOpen)
			store.audit({ function: 'backup', objectRef: file, personId: null, role: 'program' })
		return damage.map(damageHere)
	} catch (error) {
		return [
			'The daily backup failed. ' +
				`${error instanceof Refusal ? error.message : 'Open Backups and make one by hand.'}`,
		]
	}
}
/** What is said of a record that is damaged here. */
export const damageHere = ({ older, ...damage }: DamageHere): string =>
	damagedHere(damage, dayOfMoment(damage.at), older)
