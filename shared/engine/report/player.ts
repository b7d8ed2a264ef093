/**
 * The player report: page one, how what it says is worn in, and on the next page what was found and
 * what it means. Where each rule comes from is kept with it, and not printed.
 */
import type { SettledPlan } from '../prescription/settled.ts'
import type { Speak } from '../words/speak.ts'
import { amended, frame, type Section, slimSignature, small, speakOf } from './base.ts'
import type { Block, LwDocument } from './document.ts'
import { explainedAtEnd } from './explained.ts'
import type { ReportInput } from './inputs.ts'
import { languageLines } from './language-told.ts'
import { Notes } from './notes.ts'
import { pageOneBlocks, pageOneSubject } from './page-one.ts'
import { planOf } from './plan-of.ts'
import { anklesOverTime, found } from './player/found.ts'
import { growing } from './player/growth.ts'
import { insert } from './player/insert.ts'
import { moreSigns } from './player/more-signs.ts'
import { nextPair, toTry } from './player/next-pair.ts'
import { pairs } from './player/pairs.ts'
import { raise } from './player/raise.ts'
import { work } from './player/work.ts'
import { isNote, isOtherNow } from './since/note.ts'
import { waits } from './waits.ts'

/** Earlier visits that could not be read when it was signed. */
const lacking: Section = (input, _notes, t) =>
	input.lacking ? [small(t('player.lacking', { count: input.lacking }))] : []

/** How what is to be done is done: it follows page one, on it where there is room. */
const how: readonly Section[] = [raise, insert, work]
/** What it rests on. */
const why: readonly Section[] = [
	found,
	anklesOverTime,
	nextPair,
	toTry,
	pairs,
	growing,
	lacking,
	moreSigns,
]
/** After the note of a re-check only what is another now, or was measured anew. */
const noteParts = (input: ReportInput): (readonly Section[])[] => [
	[
		...(isOtherNow(input, 'raise') ? [raise] : []),
		...(isOtherNow(input, 'insert') ? [insert] : []),
		...(isOtherNow(input, 'changes', 'lacing') ? [work] : []),
	],
	[
		...(isOtherNow(input, 'pair') ? [nextPair, toTry, pairs] : []),
		...(input.visit.since?.measure ? [growing] : []),
		lacking,
		moreSigns,
	],
]
/** The page of a held player says what must be done now, and nothing more. */
const isFull = ({ gate }: SettledPlan): boolean => waits(gate, 'sport')
/**
 * What follows page one, in the order in which it is read; its notes are listed in this order. What
 * changed since the version before stands first under the heading of the next page.
 */
function following(input: ReportInput, notes: Notes, t: Speak): Block[] {
	const [toWear, reasons] = (isNote(input) ? noteParts(input) : [how, why]).map((sections) =>
		sections.flatMap((section) => section(input, notes, t)),
	) as [Block[], Block[]]
	const changed = amended(input, t)
	const rest = [...reasons.slice(0, 1), ...changed, ...reasons.slice(1)]
	const [head, ...others] = toWear
	if (isFull(planOf(input)) || changed.length > 0 || head?.kind !== 'heading')
		return [...rest, ...toWear]
	return [{ ...head, pageOneEnds: true }, ...others, ...rest]
}
/** Composes the player report as data. The same input gives the same document. */
export function playerReport(input: ReportInput): LwDocument {
	const t = speakOf(input.clinic)
	const notes = new Notes(t, { withBodyMass: false, apart: true })
	const met = new Set<string>()
	const first = pageOneBlocks(input, t, notes, met)
	const rest = explainedAtEnd(following(input, notes, t), t, met)
	return {
		...frame(input, t),
		title: t('player.title'),
		kind: 'player',
		print: 'reading',
		slim: true,
		subject: pageOneSubject(input, t),
		blocks: [...first, ...rest, ...languageLines(input, 'player', t), ...slimSignature(input, t)],
		notes: notes.list,
		notesApart: true,
	}
}
