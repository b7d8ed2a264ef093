/** A draft as it was last saved, read as far as this version knows it. */
import { z } from 'zod'
import { type DraftContent, draftContentSchema } from '../../../shared/contract.ts'
import type { UnknownEntry } from '../../../shared/desk/ledger/read.ts'
import { readTolerantly } from '../../../shared/desk/ledger/tolerant.ts'
import { seenSchema, stampsSchema } from '../../../shared/desk/outreach/stamps.ts'
import { SealBroken } from '../../store/seal.ts'
import type { Deps } from '../records/deps.ts'
import { Refusal } from '../records/refusal.ts'
import { typistsSchema } from './typists.ts'

/** As it is sealed. What a newer version put beside stays with it. */
const valueSchema = z.looseObject({
	playerId: z.string(),
	content: z.unknown(),
	amends: z.looseObject({ visitId: z.string(), reason: z.string() }).optional(),
	// stamps that cannot be read are as good as none
	stamps: stampsSchema.optional().catch(undefined),
	seen: seenSchema.optional().catch(undefined),
	typists: typistsSchema.optional().catch(undefined),
})
export interface KeptDraft {
	savedAt: string
	/** with all that this version does not know */
	value: z.infer<typeof valueSchema>
	content: DraftContent
	/** what was cut off the content for reading; it is put back when the draft is saved */
	unknown: UnknownEntry[]
}

/** What is known of a draft that cannot be read, for the person. */
const outlineSchema = z.object({
	content: z.object({ visit: z.object({ visitDate: z.string() }) }),
})
function nameOf(savedAt: string, value: unknown): string {
	const outline = outlineSchema.safeParse(value)
	const saved = `last saved at ${savedAt.slice(0, 16).replace('T', ' ')} UTC`
	return outline.success
		? `The draft of the visit of ${outline.data.content.visit.visitDate}, ${saved},`
		: `The draft ${saved}`
}
/** How many entries that cannot be read are named. */
const mostNamed = 5
function unreadable(savedAt: string, value: unknown, problems: Refusal['problems'] = []): Refusal {
	const named = problems.slice(0, mostNamed)
	const listed = named.map(({ path, message }) => ` ${path}: ${message}.`).join('')
	return new Refusal(
		'visits.newer-draft',
		`${nameOf(savedAt, value)} holds entries that this version of Lastwright cannot read. It was ` +
			'kept as it is; all other records are unaffected. Open it with the version that wrote it, ' +
			`or bring Lastwright here up to that version.${listed}`,
		named,
	)
}
/**
 * A draft as it stands on the disk; undefined where it is not there.
 * @throws SealBroken where it is damaged, Refusal naming it where this version cannot read it
 */
export function keptDraft({ store }: Pick<Deps, 'store'>, draftId: string): KeptDraft | undefined {
	const draft = store.draft(draftId)
	if (!draft) return undefined
	const savedAt = draft.at
	const value = valueSchema.safeParse(draft.value)
	if (!value.success) throw unreadable(savedAt, draft.value)
	const read = readTolerantly(draftContentSchema, value.data.content, false)
	if (!read.ok) throw unreadable(savedAt, draft.value, read.problems)
	return { savedAt, value: value.data, content: read.value, unknown: read.unknown }
}
/**
 * The same for a person who waits for it.
 * @throws Refusal naming it where it is damaged or cannot be read
 */
export function openKeptDraft(deps: Pick<Deps, 'store'>, draftId: string): KeptDraft | undefined {
	try {
		return keptDraft(deps, draftId)
	} catch (error) {
		if (!(error instanceof SealBroken)) throw error
		throw new Refusal(
			'visits.damaged-draft',
			`The draft ${draftId} is damaged and cannot be read. All other records are unaffected; ` +
				'restore it from a backup.',
		)
	}
}
