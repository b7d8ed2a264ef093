/** Ids of records that were destroyed by the rule: wherever they are still known. */
import type { Store } from '../../store/store.ts'
import { readRecord } from '../records/open.ts'
import { destroyedLines } from './retention.ts'

/** As the register has them, and the head outside the folder. */
export const destroyedIds = (store: Store): Set<string> =>
	new Set([...destroyedLines(store).flatMap((line) => line.recordIds), ...store.destroyedOutside()])
/**
 * As the registers in backups have them: a backup made after a destruction knows of it, whichever
 * PC made it. A backup that cannot be read tells nothing.
 * @param more whole paths of files besides those of the list
 */
export function idsInBackups(
	store: Pick<Store, 'backups' | 'recordsInBackup'>,
	more: readonly string[],
): Set<string> {
	const listed = store.backups().map(({ folder, file }) => `${folder}/${file}`)
	const found = new Set<string>()
	for (const file of new Set([...listed, ...more]))
		for (const record of store.recordsInBackup(file, ['register'])) {
			const reading = readRecord('register', record)
			for (const id of reading.state === 'read' ? reading.value.recordIds : []) found.add(id)
		}
	return found
}
