/** What a person is told where a call could not be answered. */
import type { Answer } from '../../shared/contract.ts'
import { Refusal } from '../services/records/refusal.ts'
import { WritesHeld } from '../store/database.ts'
import { SealBroken } from '../store/seal.ts'

type Refused = Extract<Answer<never>, { ok: false }>

/** What the disk or the records file is known to fail with, and what the person can do. */
const sqliteFaults: readonly { fits: RegExp; says: string }[] = [
	{
		fits: /full/,
		says: 'The disk is full. Your entries are still on this screen: free some space and try again.',
	},
	{
		fits: /readonly|read-only/,
		says:
			'The data folder cannot be written to. Your entries are still on this screen: make ' +
			'the folder writable and try again.',
	},
	{
		fits: /malformed|not a database/,
		says:
			'Part of the records file is damaged. Nothing was changed. Restore the newest ' +
			'backup: open Backups, or start Lastwright anew and follow what it says.',
	},
]
const anyFault =
	'Lastwright could not finish this. Nothing that was saved is lost. Try again; if it ' +
	'stays, start Lastwright anew.'

/** What a fault of ours may carry: Node's code, and SQLite's own words. */
interface Fault extends Error {
	code?: string
	errstr?: string
}
/** @param note where a fault of ours is noted: its kind alone, without personal data */
export function refusalOf(error: unknown, note: (text: string) => void): Refused {
	if (error instanceof Refusal)
		return {
			ok: false,
			message: error.message,
			...(error.problems && { problems: error.problems }),
		}
	if (error instanceof WritesHeld) return { ok: false, message: error.message }
	if (error instanceof SealBroken)
		return {
			ok: false,
			message:
				'This record is damaged and cannot be read. All other records are unaffected; ' +
				'restore it from a backup.',
		}
	const fault: Fault = error instanceof Error ? error : new Error('unknown')
	note(`${fault.name} ${fault.code ?? ''}`)
	const known = sqliteFaults.find(({ fits }) => fits.test(fault.errstr ?? ''))
	return { ok: false, message: known?.says ?? anyFault }
}
