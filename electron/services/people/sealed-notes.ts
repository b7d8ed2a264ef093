/**
 * Small sealed notes about the ways in, kept with the store and never merged: tries of PINs, the
 * recovery key that nobody confirmed, passphrases that are to be changed.
 */
import { z } from 'zod'
import type { Store } from '../../store/store.ts'

type Notes = Pick<Store, 'sealedSetting' | 'setSealedSetting'>

/** What is known of a note: its value, that there is none yet, or that it cannot be read. */
type Read<Value> = { state: 'read'; value: Value } | { state: 'none' | 'damaged' }

/** A note of the store by its name. @throws Error while the records are locked */
export function sealedNote<Value>(name: string, schema: z.ZodType<Value>) {
	return {
		read(store: Notes): Read<Value> {
			let found: unknown
			try {
				found = store.sealedSetting(name)
			} catch {
				return { state: 'damaged' }
			}
			if (found === undefined) return { state: 'none' }
			const read = schema.safeParse(found)
			return read.success ? { state: 'read', value: read.data } : { state: 'damaged' }
		},
		write: (store: Notes, value: Value): void => store.setSealedSetting(name, value),
	}
}
const counts = z.record(z.string(), z.int().min(0))

/** Wrong PINs by the person aimed at. */
export const pinTriesNote = sealedNote('pin-tries', counts)
/** Whether somebody typed part of the printed recovery key; no note: printed by an earlier version. */
export const recoveryNote = sealedNote(
	'recovery-key',
	z.strictObject({ state: z.enum(['unconfirmed', 'confirmed']) }),
)
/** Why the passphrase of a slot is to be changed by its person. */
export const duePassphrases = sealedNote(
	'passphrases-due',
	z.record(z.string(), z.enum(['given', 'weak'])),
)
/**
 * What the owner was told of: the newest backup that was late, '' where there was none, null where
 * none was late; and whether the disk was nearly full.
 */
export const toldOfRoom = sealedNote(
	'told-of-room',
	z.strictObject({ late: z.string().nullable(), isFull: z.boolean() }),
)
/** Since when the key of the records waits to be changed, as somebody left; null where it does not. */
export const keyChangeDue = sealedNote('key-change-due', z.iso.datetime().nullable())
