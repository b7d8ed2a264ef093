/** Why a call was refused, as a code. */
import type { refusalCodes } from './refusal-codes.table.ts'

export type RefusalCode = (typeof refusalCodes)[number]
