/** Pages that hold what is private between the player and the clinician are not for reception. */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { OutboxItem } from '../../../shared/desk/outbox/item.ts'
import { mayHoldPrivate } from '../../../shared/engine/report/reader.ts'
import { UnreadablePdf } from '../../pdf/unreadable.ts'
import { assessmentOf } from '../records/assessment.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { readVisit } from './reading.ts'
import { versionsOf } from './visits.ts'

/** @throws Refusal where reception is at work and a page of that kind may hold what is private */
export function keepFromReception(
	{ people }: Pick<Memory, 'people'>,
	kind: string,
	signed: SignedVisit,
): void {
	if (people.acts().role !== 'reception') return
	const { visit, decisions } = signed
	if (mayHoldPrivate(kind, { visit, decisions, assessment: assessmentOf(signed) }))
		throw new Refusal(
			'visits.private-page',
			'This page holds what is private between the player and the clinician. Ask a clinician to ' +
				'open, check, print or send it.',
		)
}
/** The same of a page in the outbox: of the version that it was made from. */
export function keepItemFromReception(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	{ visitId, version, kind }: Pick<OutboxItem, 'visitId' | 'version' | 'kind'>,
): void {
	if (memory.people.acts().role !== 'reception') return
	const made = versionsOf(deps, visitId).find(({ card }) => card.version === version)
	if (made) keepFromReception(memory, kind, readVisit(deps, made))
}
/**
 * As much of a page as who is at work may read: reception sees the first page of what it sends, all
 * others the whole. @throws Refusal where it cannot be cut
 */
export async function readablePart(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	bytes: Uint8Array,
): Promise<Uint8Array> {
	if (people.acts().role !== 'reception') return bytes
	try {
		return await deps.firstPagePdf(bytes)
	} catch (error) {
		if (!(error instanceof UnreadablePdf)) throw error
		throw new Refusal(
			'visits.unreadable-pdf',
			'The first page cannot be shown: the kept pages are no PDF that can be read. Ask a clinician ' +
				'to check this document.',
		)
	}
}
