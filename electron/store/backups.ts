/** The store's backups: made and checked record by record, and looked into. */
import type { Damage } from '../../shared/desk/backups/words.ts'
import type { BackupName, BackupReason } from '../../shared/desk/records/backup-name.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { BackupRefused, makeBackup, openChecked } from './backup-file.ts'
import { type BackupPlace, type Ours, tidy } from './backup-list.ts'
import {
	closeBeside,
	copyBeside,
	copyOfKeys,
	openBeside,
	placeBeside,
	removeFile,
} from './beside.ts'
import { damageIn, lacksOf } from './copy-check.ts'
import type { DataKeys } from './data-keys.ts'
import { fitFirstCards, isOfFirstVersions } from './first-form.ts'
import { recordsIn, wholeIn } from './in-backup.ts'
import type { Parts } from './parts.ts'
import type { StoredRecord } from './record.ts'

/** What is damaged in the records themselves, and where it still stands whole. */
export interface DamageHere extends Damage {
	/** the file name of the newest older backup of this PC that has it */
	older?: string | undefined
}
export interface MadeBackup extends BackupName {
	damage: DamageHere[]
}
export interface BackupPreview {
	records: number
	visits: number
	/** time of the last record, ISO 8601 */
	lastAt?: string
	/** whether the open keys open it; absent while locked and where it holds no record */
	sameClinic?: boolean
	/** the versions of all players in order of writing; absent while locked */
	players?: StoredRecord[]
	/** what in it cannot be opened; absent while locked */
	damage?: Damage[]
}
/** What backups are made of. */
interface Needs {
	/** the records file */
	file: string
	parts: Pick<Parts, 'keyring' | 'roll' | 'records' | 'order'>
	/** what a store in another file is made of; it is opened and closed by beside.ts */
	beside: (file: string) => Parts
}
const newerKeys =
	'This backup was made after the key of the records was changed, and these records do not know ' +
	'that key. Start Lastwright with another, empty data folder and bring the backup there.'

export class Backups {
	readonly #needs: Needs
	#underWay: Promise<unknown> = Promise.resolve()
	/** one copy at a time is looked into */
	#looking: Promise<unknown> = Promise.resolve()
	constructor(needs: Needs) {
		this.#needs = needs
	}
	/**
	 * A dated backup, checked record by record; one at a time. What is damaged here already is named,
	 * and no older backup goes then.
	 * @param now ISO 8601 at the moment it is begun
	 * @param listed the backups there are, newest first
	 * @throws BackupRefused in words
	 */
	make(
		reason: BackupReason,
		folder: string,
		now: () => string,
		{ ours, listed }: { ours: () => Ours; listed: () => BackupPlace[] },
	): Promise<MadeBackup> {
		const next = this.#underWay.then(async () => {
			const { file, parts } = this.#needs
			const keys = parts.keyring.keys && copyOfKeys(parts.keyring.keys)
			const { origins } = ours()
			const at = now()
			const older = listed()
			let damage: Damage[] = []
			try {
				const check = keys ? this.#checkerOf(keys) : undefined
				const made = await makeBackup(
					file,
					folder,
					{ at, reason, origin: parts.order.origin },
					async (part) => {
						damage = (await check?.(part)) ?? []
						return { damaged: damage.length > 0 }
					},
				)
				tidy(folder, origins, { made: made.file, now: at })
				return { ...made, damage: keys ? whereWhole(damage, older, keys) : [] }
			} finally {
				keys?.forget()
			}
		})
		this.#underWay = next.catch(() => {})
		return next
	}
	/** Resolves when no backup is being written. */
	async done(): Promise<void> {
		await this.#underWay
	}
	/** To be asked right before the copy is begun: it is held against the records of that moment. */
	#checkerOf(keys: DataKeys): (part: string) => Promise<Damage[]> {
		const { roll } = this.#needs.parts
		const [expected, digest] = [[...roll.all()], roll.digest]
		return async (part) => {
			const copy = this.#needs.beside(part)
			openBeside(copy, part, keys)
			try {
				const lacks = lacksOf(copy, expected, digest)
				const found = await damageIn(copy)
				const known = new Set(found.map(({ id }) => id))
				const all = [...found, ...lacks.filter(({ id }) => !known.has(id))]
				this.#refuseWorse(all)
				return all
			} finally {
				closeBeside(copy, part)
			}
		}
	}
	/** What is whole here must be whole in the copy. @throws BackupRefused */
	#refuseWorse(damage: readonly Damage[]): void {
		const { records } = this.#needs.parts
		const worse = damage.find(
			({ id, what }) => (what === 'record' || what === 'gone') && records.isReadable(id),
		)
		if (worse)
			throw new BackupRefused(
				`The copy does not hold record ${worse.id} whole. The stick or disk may be failing: ` +
					'use another one.',
			)
	}
	/**
	 * What a backup holds. With the key open everything in it is opened, the players are named, and
	 * what is damaged; else only what stands in clear. @throws BackupRefused
	 */
	preview(file: string): Promise<BackupPreview> {
		const next = this.#looking.then(() => this.#preview(file))
		this.#looking = next.catch(() => {})
		return next
	}
	async #preview(file: string): Promise<BackupPreview> {
		const { db, schema: _, setUp: __, kinds, ...clear } = openChecked(file)
		db.close()
		const bare = { records: clear.records, ...present({ lastAt: clear.lastAt }) }
		const shown = { ...bare, visits: kinds.visit ?? 0 }
		const { keyring } = this.#needs.parts
		if (!keyring.keys) return shown
		const keys = copyOfKeys(keyring.keys)
		const place = placeBeside(this.#needs.file, 'looking')
		try {
			copyBeside(file, place)
			return { ...shown, ...(await this.lookAt(place, keys)) }
		} finally {
			keys.forget()
			removeFile(place)
		}
	}
	/** Opens everything in a copy of this version. @throws BackupRefused where its keys are newer */
	async lookAt(
		place: string,
		keys: DataKeys,
	): Promise<Pick<BackupPreview, 'sameClinic' | 'players' | 'damage'>> {
		const copy = this.#needs.beside(place)
		openBeside(copy, place, keys)
		try {
			if (copy.roll.count === 0) return { players: [], damage: [] }
			if (!copy.roll.all().some(({ id }) => copy.records.isReadable(id)))
				return { sameClinic: false, players: [], damage: [] }
			if (copy.slots.olderKeys().length >= keys.all().length) throw new BackupRefused(newerKeys)
			// records of the first form had no short forms: they are given them, not missed
			if (isOfFirstVersions(copy)) copy.database.together(() => fitFirstCards(copy))
			const { records: players } = copy.records.load(['player'])
			return { sameClinic: true, players, damage: await damageIn(copy) }
		} finally {
			closeBeside(copy, place)
		}
	}
	/** Records of some kinds in a backup; those that these keys do not open are left out. */
	recordsIn(file: string, kinds: readonly string[]): StoredRecord[] {
		const { keys } = this.#needs.parts.keyring
		return keys ? recordsIn(file, kinds, keys) : []
	}
}
/** Looks for what is damaged in the older whole backups of this PC, the newest first. */
function whereWhole(
	damage: readonly Damage[],
	older: readonly BackupPlace[],
	keys: DataKeys,
): DamageHere[] {
	const left = new Set(damage.filter(({ what }) => what !== 'draft').map(({ id }) => id))
	const found = new Map<string, string>()
	for (const { folder, file, madeBy, damaged } of older) {
		if (left.size === 0) break
		if (madeBy === 'other' || damaged) continue
		for (const id of wholeIn(folder, file, [...left], keys)) {
			found.set(id, file)
			left.delete(id)
		}
	}
	return damage.map((one) => ({ ...one, ...present({ older: found.get(one.id) }) }))
}
