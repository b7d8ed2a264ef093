import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { State } from '../records/state.ts'
import {
	answerQuestion,
	compareDrafts,
	joinByChoice,
	listOutreach,
	mergePack,
	previewMerge,
	putDraftAway,
} from './merge.ts'
import { makePack, makeReturn, removeHere } from './packs.ts'

/** The calls about packs that go out and come home. */
export const outreachCalls = (state: State, deps: Deps) =>
	({
		'outreach.list': () => listOutreach(state, deps),
		'outreach.makePack': (input) => makePack(state, deps, input),
		'outreach.makeReturn': (input) => makeReturn(state, deps, input),
		'outreach.previewMerge': (input) => previewMerge(state, deps, input),
		'outreach.merge': (input) => mergePack(state, deps, input),
		'outreach.answer': (input) => answerQuestion(state, deps, input),
		'outreach.compareDrafts': (input) => compareDrafts(state, deps, input),
		'outreach.joinDrafts': (input) => joinByChoice(state, deps, input),
		'outreach.putDraftAway': (input) => putDraftAway(state, deps, input),
		'outreach.remove': (input) => removeHere(state, deps, input),
	}) satisfies Partial<Handlers>
