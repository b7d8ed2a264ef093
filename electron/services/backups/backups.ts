import { statSync } from 'node:fs'
import { isAbsolute, join } from 'node:path'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { backupAgeDays } from '../../../shared/desk/records/keep.ts'
import { BackupRefused } from '../../store/backup-file.ts'
import { openPackHere } from '../outreach/laptop.ts'
import type { PlayerValue } from '../records/load.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'

const dayMs = 86_400_000
/** most names that a preview lists on either side */
const mostNames = 50
const bytesOf = (file: string) => {
	try {
		return statSync(file).size
	} catch {
		return 0
	}
}

export function listBackups(state: State, { store, now }: Deps): OutputOf<'backups.list'> {
	const backups = store.backups()
	const ageDays = backupAgeDays(backups[0]?.at, now().toISOString())
	const warn = state.settings.backupWarnDays
	const nag =
		backups.length === 0
			? 'There is no backup yet. Make one now, best on a stick or another disk.'
			: ageDays === undefined
				? 'The newest backup is dated after today. Check the date of this PC.'
				: ageDays >= warn
					? `The newest backup is ${ageDays} days old. Make one now.`
					: ''
	return {
		folder: store.backupFolder,
		...(ageDays === undefined ? {} : { ageDays }),
		nag,
		backups: backups.map((backup) => ({
			...backup,
			bytes: bytesOf(join(backup.folder, backup.file)),
		})),
	}
}
export async function makeBackup(
	{ store }: Deps,
	{ folder }: InputOf<'backups.make'>,
): Promise<OutputOf<'backups.make'>> {
	if (folder !== undefined && !isAbsolute(folder))
		throw new Refusal('The folder is not a whole path.', [
			{ path: 'folder', message: `given ${folder}, allowed: a whole path such as /media/stick` },
		])
	const where = folder ?? store.backupFolder
	const made = await inWords(() => store.backup('asked', where), where)
	store.audit({ function: 'backup', objectRef: made.file })
	return { ...made, folder: where, bytes: bytesOf(join(where, made.file)) }
}
async function inWords<T>(work: () => Promise<T>, where: string): Promise<T> {
	try {
		return await work()
	} catch (error) {
		if (error instanceof BackupRefused) throw new Refusal(error.message)
		const { code, errstr } = error as { code?: string; errstr?: string }
		if (code === 'ENOSPC' || /full/.test(errstr ?? ''))
			throw new Refusal(
				`There is no room in ${where}. Free some space or use another stick. No half backup was ` +
					'left there.',
			)
		if (
			['EACCES', 'EROFS', 'EPERM', 'ENOENT', 'ENOTDIR', 'EEXIST'].includes(code ?? '') ||
			/readonly|unable to open/.test(errstr ?? '')
		)
			throw new Refusal(
				`The folder ${where} cannot be written to. Check that the stick is plugged in and not ` +
					'write-protected, or choose another folder.',
			)
		throw error
	}
}
export async function setBackupFolder(
	{ store, saveSettings }: Deps,
	{ folder }: InputOf<'backups.setFolder'>,
): Promise<OutputOf<'backups.setFolder'>> {
	if (!isAbsolute(folder))
		throw new Refusal('The folder is not a whole path.', [
			{ path: 'folder', message: `given ${folder}, allowed: a whole path such as /media/stick` },
		])
	// a folder counts once a checked backup stands in it
	await inWords(() => store.backup('asked', folder), folder)
	store.backupFolder = folder
	saveSettings({ backupFolder: folder })
	store.audit({ function: 'update', objectRef: 'settings:backup-folder' })
	return {}
}
/** A name of the list, or a whole path. */
function fileOf({ store }: Deps, given: string): string {
	if (isAbsolute(given)) return given
	const known = store.backups().find((one) => one.file === given)
	if (!known)
		throw new Refusal('This backup is not in the list.', [
			{ path: 'file', message: `given ${given}, allowed: a file of the list, or a whole path` },
		])
	return join(known.folder, known.file)
}
export function previewBackup(
	state: State,
	deps: Deps,
	{ file }: InputOf<'backups.preview'>,
): OutputOf<'backups.preview'> {
	try {
		const { records, visits, lastAt, sameClinic, players } = deps.store.preview(fileOf(deps, file))
		const then = new Map<string, string>()
		for (const { value } of players ?? []) {
			const { playerId, player } = value as PlayerValue
			then.set(playerId, `${player.givenName} ${player.familyName}`)
		}
		const now = new Map(
			[...state.players.values()].map(({ card }) => [
				card.playerId,
				`${card.givenName} ${card.familyName}`,
			]),
		)
		const only = (a: Map<string, string>, b: Map<string, string>) =>
			sameClinic
				? [...a]
						.filter(([id]) => !b.has(id))
						.map(([, name]) => name)
						.slice(0, mostNames)
				: []
		return {
			records,
			visits,
			...(lastAt === undefined ? {} : { lastAt }),
			...(sameClinic === undefined ? {} : { sameClinic, players: then.size }),
			onlyNow: only(now, then),
			onlyThen: only(then, now),
		}
	} catch (error) {
		if (error instanceof BackupRefused) throw new Refusal(error.message)
		throw error
	}
}
export async function restoreBackup(
	state: State,
	deps: Deps,
	{ file }: InputOf<'backups.restore'>,
): Promise<OutputOf<'backups.restore'>> {
	const from = fileOf(deps, file)
	const { before } = await inWords(() => deps.store.restore(from), deps.store.backupFolder)
	state.clear()
	return { before: before?.file ?? '' }
}
/** On a PC without records: a backup becomes the records. */
export async function moveHere(
	deps: Deps,
	{ file, passphrase }: InputOf<'session.moveHere'>,
): Promise<OutputOf<'session.moveHere'>> {
	if (passphrase !== undefined) return openPackHere(deps, file, passphrase)
	if (deps.store.isSetUp)
		throw new Refusal(
			'There are records on this PC already. Unlock them and use Backups to restore.',
		)
	const from = fileOf(deps, file)
	try {
		const { records, visits } = deps.store.preview(from)
		await deps.store.restore(from)
		return { records, visits }
	} catch (error) {
		if (error instanceof BackupRefused) throw new Refusal(error.message)
		throw error
	}
}
/**
 * Once a day, after unlocking, behind the person's work. @returns what to warn of, empty where all
 * is well
 */
export async function dailyBackup({ store, now }: Deps): Promise<string> {
	const [newest] = store.backups().filter((one) => one.reason === 'daily')
	const age = newest ? now().getTime() - Date.parse(newest.at) : dayMs
	if (age >= 0 && age < dayMs) return ''
	try {
		const made = await inWords(() => store.backup('daily'), store.backupFolder)
		if (store.isOpen)
			store.audit({ function: 'backup', objectRef: made.file, personId: null, role: 'program' })
		return ''
	} catch (error) {
		return (
			'The daily backup failed. ' +
			`${error instanceof Refusal ? error.message : 'Open Backups and make one by hand.'}`
		)
	}
}
