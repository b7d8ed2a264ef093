import type { Handlers } from '../../calls/handlers.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { amendVisit, openDraft } from './drafts.ts'
import { addNote, countersign, markInError, visitHistory } from './notes.ts'
import { accessiblePage, sheetPage } from './page.ts'
import { handedOver, openReport } from './reports.ts'
import { lookAtDraft, saveDraft } from './saving.ts'
import { openSheet } from './sheet.ts'
import { previewDraft, signVisit } from './signing.ts'
import { openVisit } from './visits.ts'

type Needs = Pick<Memory, 'clinic' | 'drafts' | 'people' | 'players' | 'shelf'>

/** The calls about drafts, signed visits and their reports. */
export const visitCalls = (memory: Needs, deps: Deps) =>
	({
		'drafts.open': (input) => openDraft(memory, deps, input),
		'drafts.save': (input) => saveDraft(memory, deps, input),
		'drafts.look': (input) => lookAtDraft(memory, deps, input),
		'drafts.preview': (input) => previewDraft(memory, deps, input),
		'visits.sign': (input) => signVisit(memory, deps, input),
		'visits.open': (input) => openVisit(deps, input),
		'visits.amend': (input) => amendVisit(memory, deps, input),
		'visits.history': (input) => visitHistory(deps, input),
		'visits.markInError': (input) => markInError(memory, deps, input),
		'visits.addNote': (input) => addNote(memory, deps, input),
		'visits.countersign': (input) => countersign(memory, deps, input),
		'reports.open': (input) => openReport(memory, deps, input),
		'reports.page': (input) => accessiblePage(memory, deps, input),
		'reports.sheetPage': (input) => sheetPage(deps, input),
		'reports.sheet': (input) => openSheet(deps, input),
		'reports.handedOver': (input) => handedOver(memory, deps, input),
	}) satisfies Partial<Handlers>
