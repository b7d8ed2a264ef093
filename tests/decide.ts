/**
 * What a clinician does before signing, through any way of asking the host: each question
 * of the open draft is settled as proposed.
 */
import { settledAsProposed } from '../electron/command/demo.ts'
import type { DraftContent } from '../shared/contract.ts'
import { assess } from '../shared/engine/assess.ts'
import type { Visit } from '../shared/engine/visit/visit.ts'

// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
type Ask = (name: string, input: object) => Promise<any>
/**
 * @param visitDate that of the open draft. @returns its id, ready to be signed as far as
 * questions go
 */
export async function decideAll(ask: Ask, playerId: string, visitDate: string): Promise<string> {
	const { draft, earlier } = (await ask('drafts.open', { playerId, visitDate })) as {
		draft: { draftId: string; content: DraftContent }
		earlier: Visit[]
	}
	const { visit, decisions } = draft.content
	const assessment = assess(
		visit,
		earlier,
		(await ask('protocol.get', {})).file,
		(await ask('shelf.get', {})).shelf,
	)
	await ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			decisions: settledAsProposed(assessment, decisions),
		},
	})
	return draft.draftId
}
