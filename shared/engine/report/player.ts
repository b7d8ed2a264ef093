/**
 * The player report: page one, and on the pages that follow what was found and why, how things are
 * worn in, and basis notes.
 */
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	playsOf,
	type Section,
	signature,
	small,
	speakOf,
} from './base.ts'
import type { LwDocument } from './document.ts'
import { explained } from './explained.ts'
import type { ReportInput } from './inputs.ts'
import { Notes } from './notes.ts'
import { pageOneBlocks, pageOneSubject } from './page-one.ts'
import { more, moreSigns } from './player/aftercare.ts'
import { found, measures } from './player/found.ts'
import { growing } from './player/growth.ts'
import { insert } from './player/insert.ts'
import { nextPair, toTry } from './player/next-pair.ts'
import { pairs } from './player/pairs.ts'
import { raise } from './player/raise.ts'
import { size } from './player/size.ts'
import { work } from './player/work.ts'

/** Who the pages are about, beyond what page one is carried about with. */
function about({ visit }: ReportInput, t: Speak): string {
	const { birthDate, club } = visit.player
	const said: [string, string | undefined][] = [
		[t('subject.born'), dateWords(birthDate)],
		[t('subject.club'), club],
		[t('subject.plays'), visit.play?.code || visit.play?.position ? playsOf(visit, t) : undefined],
	]
	return said.flatMap(([label, value]) => (value ? [`${label}: ${value}.`] : [])).join(' ')
}
const details: Section = (input, _notes, t) => [
	heading(t('player.details'), { newPage: true }),
	small(about(input, t)),
]
/** Earlier visits that could not be read when it was signed. */
const lacking: Section = (input, _notes, t) =>
	input.lacking ? [small(t('player.lacking', { count: input.lacking }))] : []

/** In the order in which they are read; their notes are numbered in this order too. */
const sections: readonly Section[] = [
	details,
	(input, _notes, t) => amended(input, t),
	found,
	measures,
	size,
	nextPair,
	toTry,
	pairs,
	work,
	raise,
	insert,
	growing,
	lacking,
	more,
	moreSigns,
	(input, _notes, t) => signature(input, t),
]

/** Composes the player report as data. The same input gives the same document. */
export function playerReport(input: ReportInput): LwDocument {
	const t = speakOf(input.clinic)
	const notes = new Notes(t, false)
	const met = new Set<string>()
	const first = pageOneBlocks(input, t, notes, met)
	const following = explained(
		sections.flatMap((section) => section(input, notes, t)),
		t,
		met,
	)
	return {
		...frame(input, t),
		title: t('player.title'),
		kind: 'player',
		print: 'reading',
		slim: true,
		subject: pageOneSubject(input, t),
		blocks: [...first, ...following],
		notes: notes.list,
	}
}
