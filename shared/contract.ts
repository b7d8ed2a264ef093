/** Every call a screen can make of the host: name, input, output, and who may. */
import { z } from 'zod'
import { clinicSchema } from './clinic.ts'
import { decisionsSchema } from './decisions.ts'
import { playerSchema, visitSchema } from './visit/visit.ts'

export const roles = ['nobody', 'clinician', 'reception', 'owner'] as const
export type Role = (typeof roles)[number]

const id = z.string().min(1).max(80)
/** A draft holds the visit as far as it is valid, and the raw text of fields that are not yet. */
export const draftContentSchema = z.strictObject({
	visit: visitSchema,
	raw: z.record(z.string(), z.string()),
	decisions: decisionsSchema,
	step: z.string().max(40).optional(),
})
export type DraftContent = z.infer<typeof draftContentSchema>

export const cardSchema = z.strictObject({ playerId: id, givenName: z.string(), familyName: z.string(), birthDate: z.string(), sex: z.string(), club: z.string().optional(), lastVisit: z.string().optional(), openDraft: z.boolean() })
export type Card = z.infer<typeof cardSchema>
/** What stands in a signed record. The assessment is the engine's own output, kept as data. */
export const signedVisitSchema = z.strictObject({
	visitId: id, playerId: id, signedAt: z.string(),
	signedBy: z.strictObject({ name: z.string(), registration: z.string() }),
	visit: visitSchema, assessment: z.unknown(), decisions: decisionsSchema,
	protocol: z.strictObject({ id: z.string(), version: z.number(), digest: z.string() }),
	/** SHA-256 of the canonical content. */
	digest: z.string(),
	clinic: clinicSchema,
	reportSha256: z.string(),
})
export type SignedVisit = z.infer<typeof signedVisitSchema>
const pdf = z.strictObject({ base64: z.string(), sha256: z.string(), fileName: z.string() })
const nothing = z.strictObject({})
const draft = z.strictObject({ draftId: id, playerId: id, savedAt: z.string(), content: draftContentSchema })

function call<I extends z.ZodType, O extends z.ZodType>(input: I, output: O, who: readonly Role[]) { return { input, output, who } }
const anyone: readonly Role[] = roles
const staff: readonly Role[] = ['clinician', 'reception', 'owner']
const clinicians: readonly Role[] = ['clinician', 'owner']

export const contract = {
	'session.status': call(nothing, z.strictObject({ state: z.enum(['needs-setup', 'locked', 'open']), demo: z.boolean(), clinicName: z.string().optional(), version: z.string(), warnings: z.array(z.string()) }), anyone),
	'session.setUp': call(z.strictObject({ clinic: clinicSchema, passphrase: z.string().min(8).max(200) }), z.strictObject({ recoveryKey: z.string() }), anyone),
	'session.unlock': call(z.strictObject({ passphrase: z.string().max(200) }), nothing, anyone),
	'session.unlockWithRecoveryKey': call(z.strictObject({ recoveryKey: z.string().max(200), newPassphrase: z.string().min(8).max(200) }), nothing, anyone),
	'session.lock': call(nothing, nothing, staff),
	'clinic.get': call(nothing, clinicSchema, staff),
	'clinic.save': call(clinicSchema, nothing, clinicians),
	'players.search': call(z.strictObject({ query: z.string().max(200), limit: z.int().min(1).max(500) }), z.strictObject({ total: z.number(), cards: z.array(cardSchema) }), staff),
	/** Without playerId a new player; possible duplicates are returned, never merged. */
	'players.save': call(z.strictObject({ playerId: id.optional(), player: playerSchema }), z.strictObject({ playerId: id, similar: z.array(cardSchema) }), staff),
	'players.open': call(z.strictObject({ playerId: id }), z.strictObject({ player: playerSchema, visits: z.array(z.strictObject({ visitId: id, visitDate: z.string(), signedAt: z.string() })), drafts: z.array(z.strictObject({ draftId: id, visitDate: z.string(), savedAt: z.string() })) }), staff),
	/** Resumes the player's open draft, or starts one dated `visitDate`. */
	'drafts.open': call(z.strictObject({ playerId: id, visitDate: z.iso.date() }), z.strictObject({ draft, earlier: z.array(visitSchema) }), clinicians),
	'drafts.save': call(z.strictObject({ draftId: id, content: draftContentSchema }), z.strictObject({ savedAt: z.string() }), clinicians),
	'drafts.preview': call(z.strictObject({ draftId: id }), pdf, clinicians),
	'visits.sign': call(z.strictObject({ draftId: id }), z.strictObject({ visitId: id }), clinicians),
	'visits.open': call(z.strictObject({ visitId: id }), signedVisitSchema, clinicians),
	'reports.open': call(z.strictObject({ visitId: id }), pdf, staff),
} as const
export type Contract = typeof contract
export type CallName = keyof Contract
export type InputOf<N extends CallName> = z.input<Contract[N]['input']>
export type OutputOf<N extends CallName> = z.output<Contract[N]['output']>
/** Every answer crosses as one of these; a refusal is words for the person, never a stack. */
export type Answer<T> = { ok: true; value: T } | { ok: false; message: string; problems?: { path: string; message: string }[] }
