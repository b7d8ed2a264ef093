/** Backups of a store as the services see them: made, looked into, restored; and what was destroyed. */
import { existsSync, statfsSync, statSync } from 'node:fs'
import type { BackupReason } from '../../shared/desk/records/backup-name.ts'
import { arrivedSetting } from './at-unlock.ts'
import { BackupRefused } from './backup-file.ts'
import { type BackupPlace, backupsIn, type Ours, removeParts } from './backup-list.ts'
import type { BackupPreview, MadeBackup } from './backups.ts'
import { removeKeptAside } from './beside.ts'
import { DestroyedFile } from './destroyed-file.ts'
import { destroyForGood } from './destruction.ts'
import type { StoreFiles } from './folder.ts'
import { KeyedStore } from './keyed-store.ts'
import type { Opening } from './opening.ts'
import { assemble, assembleBeside, type Outside, type Parts } from './parts.ts'
import type { StoredRecord } from './record.ts'
import { bringIn, type RestoreNeeds, restoreFrom } from './restore.ts'

export class BackedUpStore extends KeyedStore {
	readonly #beside: (file: string) => Parts
	readonly #destroyed: DestroyedFile
	#isRestoring = false
	/** Where backups go unless another folder is named. */
	backupFolder: string

	constructor(files: StoreFiles, outside: Outside, backupFolder: string) {
		super(assemble(files, outside), files, outside.now)
		this.#beside = (file) => assembleBeside(file, outside)
		this.#destroyed = new DestroyedFile(files.outsideDestroyed)
		this.backupFolder = backupFolder
	}
	protected opening(): Opening {
		const [parts, files, notices] = [this.parts, this.files, this.notices]
		return { parts, files, notices, now: () => this.now() }
	}
	/** Whether nothing can be written just now, as a backup is being put in place. */
	get isHeld(): boolean {
		return this.parts.database.isHeld
	}

	#ours(): Ours {
		const { order } = this.parts
		// a file that could not be opened says nothing of its names
		const names = order.origin ? order.own : []
		return { folder: this.files.folder, origins: new Set(names) }
	}
	/** Bytes that are free where the records lie, and those of the records. @throws Error of the disk */
	room(): { free: number; records: number } {
		const { folder, records } = this.files
		const { bavail, bsize } = statfsSync(folder)
		return { free: bavail * bsize, records: statSync(records).size }
	}
	/** The backups in the backup folder and beside the records, newest first. */
	backups(): BackupPlace[] {
		return backupsIn([this.backupFolder, this.files.folder], this.#ours())
	}
	/**
	 * A dated backup, checked record by record; one at a time. What is damaged here already is named.
	 * @throws BackupRefused in words
	 */
	backup(reason: BackupReason, folder = this.backupFolder): Promise<MadeBackup> {
		return this.parts.backups.make(reason, folder, () => this.now(), {
			ours: () => this.#ours(),
			listed: () => this.backups(),
		})
	}
	/** Resolves when no backup is being written. */
	backupsDone(): Promise<void> {
		return this.parts.backups.done()
	}
	/** What a backup holds, and what of it is damaged. @throws BackupRefused */
	preview(file: string): Promise<BackupPreview> {
		return this.parts.backups.preview(file)
	}
	/** Records of some kinds in a backup, as far as the open keys open them. */
	recordsInBackup(file: string, kinds: readonly string[]): StoredRecord[] {
		return this.parts.backups.recordsIn(file, kinds)
	}
	/**
	 * Puts a backup in the place of the records, guarded. What stands now is backed up first and never
	 * lost. @throws BackupRefused
	 */
	async restore<Known>(file: string, needs: RestoreNeeds<Known>): Promise<{ before: string }> {
		if (this.#isRestoring)
			throw new BackupRefused('A backup is being restored already. Wait until it stands.')
		this.#isRestoring = true
		const backUp = () => this.backup('before-restore')
		try {
			return await restoreFrom({ ...this.opening(), beside: this.#beside, backUp }, file, needs)
		} finally {
			this.#isRestoring = false
		}
	}
	/** On a PC without records: a backup becomes the records. @throws BackupRefused */
	bringIn(file: string): void {
		bringIn(this.opening(), file)
	}
	/**
	 * Removes what may hold records besides the records file and its backups: copies and parts that a
	 * crash left, files that were kept aside as damaged. @returns the names of the latter
	 */
	removeLeftovers(): string[] {
		const { origins } = this.#ours()
		for (const folder of new Set([this.backupFolder, this.files.folder]))
			if (existsSync(folder)) removeParts(folder, origins)
		return removeKeptAside(this.files.records)
	}
	/** What was brought or copied here and is still to be made safe; undefined where nothing is. */
	arrived(): unknown {
		return this.sealedSetting(arrivedSetting)
	}
	/** It was made safe. */
	settled(): void {
		this.parts.settings.drop(arrivedSetting)
	}

	/**
	 * Removes records for good and keeps what `register` writes, in one transaction; then the freed
	 * bytes are overwritten, and their ids are noted outside the folder.
	 */
	destroy(recordIds: readonly string[], draftIds: readonly string[], register: () => void): void {
		destroyForGood(this.parts, recordIds, draftIds, register)
	}
	/** Notes outside the folder that records were destroyed by the rule; twice is as once. */
	noteDestroyed(recordIds: readonly string[]): void {
		this.#destroyed.add(this.parts.keyring.opened(), recordIds)
	}
	/** Ids of records that were destroyed, as they stand outside the folder. @throws Error locked */
	destroyedOutside(): string[] {
		return this.#destroyed.read(this.parts.keyring.opened())
	}
}
