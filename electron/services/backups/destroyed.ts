/** Ids of records that were destroyed by the rule: wherever they are still known. */
import { registerLineSchema } from '../../../shared/desk/records/retention.ts'
import type { Store } from '../../store/store.ts'
import { destroyedLines } from './retention.ts'

/** As the register has them, and the head outside the folder. */
export const destroyedIds = (store: Pick<Store, 'load' | 'destroyedOutside'>): Set<string> =>
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
		for (const { value } of store.recordsInBackup(file, ['register'])) {
			const read = registerLineSchema.safeParse(value)
			for (const id of read.success ? read.data.recordIds : []) found.add(id)
		}
	return found
}
