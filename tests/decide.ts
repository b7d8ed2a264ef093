/**
 * What a clinician does before signing, through any way of asking the host: each question
 * of the open draft is settled as proposed, and what was agreed to is noted.
 */
import { settledAsProposed } from '../electron/command/demo/visits.ts'
import type { DraftContent } from '../shared/contract.ts'
import { assess } from '../shared/engine/assess.ts'
import type { Visit } from '../shared/engine/visit/visit.ts'
import { agreed } from './agreed.ts'

// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
type Ask = (name: string, input: object) => Promise<any>
/** Each question of a draft settled as proposed; what was decided besides stays. */
export async function settledBy(
	ask: Ask,
	{ visit, decisions }: Pick<DraftContent, 'visit' | 'decisions'>,
	earlier: readonly Visit[],
): Promise<DraftContent['decisions']> {
	const { file } = await ask('protocol.get', {})
	const { shelf } = await ask('shelf.get', {})
	return settledAsProposed(assess(visit, earlier, file, shelf), decisions)
}
/**
 * @param visitDate that of the open draft. @returns its id, ready to be signed as far as questions
 * and agreement go
 */
export async function decideAll(ask: Ask, playerId: string, visitDate: string): Promise<string> {
	const { draft, earlier } = (await ask('drafts.open', { playerId, visitDate })) as {
		draft: { draftId: string; content: DraftContent }
		earlier: Visit[]
	}
	const decisions = await settledBy(ask, draft.content, earlier)
	await ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, decisions: { ...decisions, ...agreed } },
	})
	return draft.draftId
}
