/** Why something did not go on the shared server: known by its code, said in words. */
import { type ShareFault, shareFaults } from './faults.table.ts'

const codeOf = (error: unknown): string => {
	const { code } = (error ?? {}) as { code?: unknown }
	return typeof code === 'string' ? code : ''
}
/** A code without a row: what the server says itself; it has nothing of a record to say. */
const unknownWords = (code: string, cause: unknown): string =>
	`The server refused it: ${cause instanceof Error ? cause.message : 'it says no more'} (${code}).`
/** A refusal of the server or of the way to it, in words for whoever reads it. */
export class ShareRefused extends Error {
	override readonly name = 'ShareRefused'
	readonly kind: ShareFault['kind']
	/** of Node, PostgreSQL or the server's own functions */
	readonly code: string
	constructor(code: string, options: ErrorOptions = {}) {
		const fault = shareFaults[code]
		super(fault?.says ?? unknownWords(code, options.cause), options)
		this.kind = fault?.kind ?? 'ours'
		this.code = code
	}
}
/** The same failure in words. */
export const refusedBy = (error: unknown): ShareRefused =>
	error instanceof ShareRefused ? error : new ShareRefused(codeOf(error), { cause: error })
/** Whether a failure is one of the server or of the way to it, and not of this program. */
export const isCoded = (error: unknown): boolean => codeOf(error) !== ''
/** Whether a failure has a code by which it is known. */
export const isKnown = (error: unknown): boolean => Object.hasOwn(shareFaults, codeOf(error))
