import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { answerQuestion } from './answers.ts'
import { listOutreach } from './list.ts'
import { makePack } from './make-pack.ts'
import { mergePack, previewMerge } from './merge.ts'
import { removeHere } from './take-off.ts'
import { compareDrafts, joinByChoice, putDraftAway } from './two-drafts.ts'
import { makeReturn } from './way-back.ts'
import { cancelWork, progressOfWork } from './work.ts'

/** The calls about packs that go out and come home. */
export const outreachCalls = (memory: Memory, deps: Deps) =>
	({
		'outreach.list': () => listOutreach(memory, deps),
		'outreach.makePack': (input) => makePack(memory, deps, input),
		'outreach.makeReturn': (input) => makeReturn(memory, deps, input),
		'outreach.progress': () => progressOfWork(memory, deps),
		'outreach.cancel': () => cancelWork(memory, deps),
		'outreach.previewMerge': (input) => previewMerge(memory, deps, input),
		'outreach.merge': (input) => mergePack(memory, deps, input),
		'outreach.answer': (input) => answerQuestion(memory, deps, input),
		'outreach.compareDrafts': (input) => compareDrafts(memory, deps, input),
		'outreach.joinDrafts': (input) => joinByChoice(memory, deps, input),
		'outreach.putDraftAway': (input) => putDraftAway(memory, deps, input),
		'outreach.remove': (input) => removeHere(memory, deps, input),
	}) satisfies Partial<Handlers>
