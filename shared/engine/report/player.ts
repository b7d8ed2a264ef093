/**
 * The player report: what to do now, what was found, size and fit, the next pair, warning signs,
 * basis notes.
 */
import { dateWords } from '../words/words.ts'
import {
	amended,
	frame,
	nameOf,
	playsOf,
	type Section,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import type { LwDocument } from './document.ts'
import { explained } from './explained.ts'
import type { ReportInput } from './inputs.ts'
import { Notes } from './notes.ts'
import { alert, doNow } from './player/actions.ts'
import { more, review, warning } from './player/aftercare.ts'
import { found, measures } from './player/found.ts'
import { growing } from './player/growth.ts'
import { insert } from './player/insert.ts'
import { load } from './player/load.ts'
import { nextPair, toTry } from './player/next-pair.ts'
import { pairs, wearUntil } from './player/pairs.ts'
import { raise } from './player/raise.ts'
import { size } from './player/size.ts'
import { work } from './player/work.ts'

/** Earlier visits that could not be read when it was signed. */
const lacking: Section = (input, _notes, t) =>
	input.lacking ? [small(t('player.lacking', { count: input.lacking }))] : []

/** In the order in which they are read; their notes are numbered in this order too. */
const sections: readonly Section[] = [
	(input, _notes, t) => amended(input, t),
	alert,
	doNow,
	load,
	wearUntil,
	found,
	size,
	measures,
	nextPair,
	toTry,
	work,
	raise,
	insert,
	pairs,
	growing,
	lacking,
	more,
	warning,
	review,
	(input, _notes, t) => signature(input, t),
]

/** Composes the player report as data. The same input gives the same document. */
export function playerReport(input: ReportInput): LwDocument {
	const { visit, clinic } = input
	const t = speakOf(clinic)
	const notes = new Notes(t, false)
	const blocks = explained(
		sections.flatMap((section) => section(input, notes, t)),
		t,
	)
	return {
		...frame(input, t),
		title: t('player.title'),
		kind: 'player',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.born'), dateWords(visit.player.birthDate)],
			[t('subject.assessed'), dateWords(visit.visitDate)],
			[t('subject.club'), visit.player.club ?? t('common.notStated')],
			[t('subject.plays'), playsOf(visit, t)],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks,
		notes: notes.list,
	}
}
