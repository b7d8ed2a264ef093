/** Why a call was refused, as a code. */
import { refusalCodes } from './refusal-codes.table.ts'

export type RefusalCode = (typeof refusalCodes)[number]
const known: ReadonlySet<string> = new Set(refusalCodes)
/** Whether a text names a reason of this version. */
export const isRefusalCode = (code: string): code is RefusalCode => known.has(code)
