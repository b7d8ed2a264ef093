/** Every call a screen can make of the host: name, input, output, and who may. */
import type { z } from 'zod'
import { backupCalls } from './desk/backups/calls.ts'
import { clinicAuditCalls } from './desk/clinic-audit/calls.ts'
import { outboxCalls } from './desk/outbox/calls.ts'
import { outreachCalls } from './desk/outreach/calls.ts'
import { peopleCalls } from './desk/people/calls.ts'
import { placeCalls } from './desk/places/calls.ts'
import { playerCalls } from './desk/players/calls.ts'
import { recallCalls } from './desk/recall/calls.ts'
import { recordCalls } from './desk/records/calls.ts'
import { seasonCalls } from './desk/season/calls.ts'
import { shelfCalls } from './desk/shelf/calls.ts'
import { squadCalls } from './desk/squad/calls.ts'
import { visitCalls } from './desk/visits/calls.ts'
import { workplaceCalls } from './desk/workplace/calls.ts'

export { type Card, cardSchema } from './desk/players/calls.ts'
export {
	type DraftContent,
	draftContentSchema,
	type SignedVisit,
	signedVisitSchema,
	type VisitNote,
} from './desk/visits/calls.ts'

import type { RefusalCode } from './desk/workplace/refusal.ts'
import type { Params } from './engine/words/sentence.ts'

export { type Role, roles } from './desk/workplace/call.ts'

/** The calls of each room; a new call is written in its room. */
export const contract = {
	...peopleCalls,
	...recordCalls,
	...workplaceCalls,
	...placeCalls,
	...playerCalls,
	...visitCalls,
	...backupCalls,
	...shelfCalls,
	...seasonCalls,
	...squadCalls,
	...outreachCalls,
	...outboxCalls,
	...recallCalls,
	...clinicAuditCalls,
} as const
export type Contract = typeof contract
export type CallName = keyof Contract
export type InputOf<Name extends CallName> = z.input<Contract[Name]['input']>
export type OutputOf<Name extends CallName> = z.output<Contract[Name]['output']>
/**
 * Every answer crosses as one of these; a refusal is a code to go by and words for the person, never
 * a stack.
 */
export type Answer<Value> =
	| { ok: true; value: Value }
	| {
			ok: false
			code: RefusalCode
			message: string
			/** `code` and `params` where the message is stated. */
			problems?: { path: string; message: string; code?: string; params?: Params }[]
	  }
