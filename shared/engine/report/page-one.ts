/** Page one of the player's report: what to do, on one page that stands alone. */

import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { frame, nameOf, speakOf, statusOf } from './base.ts'
import type { Block, LwDocument } from './document.ts'
import { explainedAtEnd } from './explained.ts'
import type { ReportInput } from './inputs.ts'
import type { Notes } from './notes.ts'
import { again, amendedNote, call } from './page-one/call.ts'
import { head } from './page-one/head.ts'
import { held } from './page-one/held.ts'
import type { Part } from './page-one/part.ts'
import { shop } from './page-one/shop.ts'
import { proposed, toDo } from './page-one/to-do.ts'
import { wearUntil, yourPairs } from './page-one/your-pairs.ts'
import { planOf } from './plan-of.ts'
import { loadBlocks } from './player/load.ts'
import { readerOf } from './reader.ts'
import { isNote, isOtherNow, sinceTold, staysAndChanges } from './since/note.ts'
import { waits } from './waits.ts'

/** Often the main treatment. */
const load: Part = (input, _reader, t) => loadBlocks(planOf(input), t)
/** In the order in which they are read. */
const parts: readonly Part[] = [
	head,
	amendedNote,
	proposed,
	held,
	toDo,
	load,
	wearUntil,
	shop,
	yourPairs,
	again,
	call,
]
/** The note of a re-check: what stays is said once, and only what is another now is said whole. */
const partsOf = (input: ReportInput): readonly Part[] =>
	isNote(input)
		? [
				head,
				amendedNote,
				proposed,
				held,
				sinceTold,
				staysAndChanges,
				toDo,
				load,
				wearUntil,
				...(isOtherNow(input, 'size', 'pair') ? [shop] : []),
				...(isOtherNow(input, 'owned') ? [yourPairs] : []),
				again,
				call,
			]
		: parts
/** Its blocks, with what its trade words mean at their end. @param notes where sources are listed */
export function pageOneBlocks(input: ReportInput, t: Speak, notes?: Notes, met?: Set<string>) {
	const reader = readerOf('player', input)
	return explainedAtEnd(
		partsOf(input).flatMap((part): Block[] => part(input, reader, t, notes)),
		t,
		met,
	)
}
/**
 * What stands over it: no more than a page needs that is carried about. Born, where one is sent, and
 * where no further page says it.
 */
export function pageOneSubject(input: ReportInput, t: Speak): LwDocument['subject'] {
	const { visit, clinic } = input
	const isBornSaid = waits(planOf(input).gate, 'sport') || isNote(input)
	return [
		[t('subject.player'), nameOf(visit)],
		...(isBornSaid
			? [[t('subject.born'), dateWords(visit.player.birthDate)] satisfies [string, string]]
			: []),
		[t('subject.assessed'), dateWords(visit.visitDate)],
		[t('subject.by'), clinic.clinician.name],
		[t('subject.status'), statusOf(input, t)],
	]
}
/** Page one alone, as it prints before the pages that follow: for the screen beside Decide. */
export function pageOne(input: ReportInput): LwDocument {
	const t = speakOf(input.clinic)
	return {
		...frame(input, t),
		title: t('player.title'),
		kind: 'player',
		print: 'reading',
		slim: true,
		subject: pageOneSubject(input, t),
		blocks: pageOneBlocks(input, t),
		notes: [],
	}
}
