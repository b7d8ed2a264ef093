/** What a person is told where a call could not be answered. */
import type { Answer } from '../../shared/contract.ts'
import { Refusal } from '../services/records/refusal.ts'
import { WritesHeld } from '../store/database.ts'
import { tooFewHandles } from '../store/disk.ts'
import { knownFault } from '../store/faults.ts'
import { FolderTaken } from '../store/lock.ts'
import { Said } from '../store/said.ts'
import { SealBroken } from '../store/seal.ts'

type Refused = Extract<Answer<never>, { ok: false }>

const anyFault =
	'Lastwright could not finish this. Nothing that was saved is lost. Try again; if it ' +
	'stays, start Lastwright anew.'

/** What a fault may carry: Node's code, and SQLite's number. */
interface Fault extends Error {
	code?: string
	errcode?: number
}
/** @param note where a fault of ours is noted: its kind alone, without personal data */
export function refusalOf(error: unknown, note: (text: string) => void): Refused {
	if (error instanceof Refusal)
		return {
			ok: false,
			code: error.code,
			message: error.message,
			...(error.problems && { problems: error.problems }),
		}
	if (error instanceof Said) return { ok: false, code: error.why, message: error.message }
	if (error instanceof WritesHeld) return { ok: false, code: 'call.held', message: error.message }
	if (error instanceof FolderTaken)
		return { ok: false, code: 'records.folder-taken', message: error.message }
	if (error instanceof SealBroken)
		return {
			ok: false,
			code: 'records.sealed-otherwise',
			message:
				'This record is damaged and cannot be read. All other records are unaffected; ' +
				'restore it from a backup.',
		}
	const fault: Fault = error instanceof Error ? error : new Error('unknown')
	note(`${fault.name} ${fault.code ?? ''} ${fault.errcode ?? ''}`.trim())
	const known = knownFault(fault)
	const message = tooFewHandles(fault) ?? known?.atWork ?? anyFault
	return { ok: false, code: known?.refused ?? 'records.fault', message }
}
