/**
 * The guardian's page: what stops, what to do, the pairs at home, what to buy, when to call and
 * to come again, wearing in, what the club was told. It begins as page one of the player's report
 * does, and says of the player by name.
 */
import { guardianPaperName } from '../words/names.ts'
import { amended, frame, slimSignature, speakOf } from './base.ts'
import type { LwDocument } from './document.ts'
import { buy } from './guardian/buy.ts'
import { again, call, shared } from './guardian/call.ts'
import { pairs, untilReview } from './guardian/pairs.ts'
import type { Part } from './guardian/part.ts'
import { wearing } from './guardian/wearing.ts'
import type { ReportInput } from './inputs.ts'
import { languageLines } from './language-told.ts'
import { head } from './page-one/head.ts'
import { held } from './page-one/held.ts'
import { proposed, toDo } from './page-one/to-do.ts'
import { pageOneSubject } from './page-one.ts'
import { planOf } from './plan-of.ts'
import { loadBlocks } from './player/load.ts'
import { readerOf } from './reader.ts'
import { isNote, isOtherNow, sinceTold, staysAndChanges } from './since/note.ts'

const changed: Part = (input, _reader, t) => amended(input, t)
const play: Part = (input, _reader, t) => loadBlocks(planOf(input), t)
const signed: Part = (input, _reader, t) => slimSignature(input, t)
/** In the order in which they are read: when to call stands on the first page, whatever follows. */
const parts: readonly Part[] = [
	head,
	held,
	changed,
	proposed,
	toDo,
	play,
	untilReview,
	pairs,
	buy,
	call,
	again,
	wearing,
	shared,
	(input, _reader, t) => languageLines(input, 'guardian', t),
	signed,
]

/** The note of a re-check, as the player's. */
const partsOf = (input: ReportInput): readonly Part[] =>
	isNote(input)
		? [
				head,
				held,
				changed,
				proposed,
				sinceTold,
				staysAndChanges,
				toDo,
				play,
				untilReview,
				...(isOtherNow(input, 'owned') ? [pairs] : []),
				...(isOtherNow(input, 'size', 'pair') ? [buy] : []),
				call,
				again,
				...(isOtherNow(input, 'raise', 'insert', 'pair') ? [wearing] : []),
				shared,
				(of, _reader, t) => languageLines(of, 'guardian', t),
				signed,
			]
		: parts
/**
 * What the guardian may read: what a competent minor asked not to be shown (`withheld`) is left
 * out.
 */
export function guardianSummary(input: ReportInput): LwDocument {
	const { guardian } = input.visit.player
	const t = speakOf(input.clinic)
	const reader = readerOf('guardian', input)
	// who signed stands at the end: the line over the page is for whom it is about
	const [player, ...rest] = pageOneSubject(input, t).filter(([label]) => label !== t('subject.by'))
	return {
		...frame(input, t),
		title: t('guardian.title'),
		kind: 'guardian',
		print: 'reading',
		slim: true,
		subject: [
			...(player ? [player] : []),
			[t('subject.guardian'), guardian ? guardianPaperName(guardian) : t('common.notStated')],
			...rest,
		],
		blocks: partsOf(input).flatMap((part) => part(input, reader, t)),
		notes: [],
	}
}
