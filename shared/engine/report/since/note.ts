/**
 * The note of a re-check, in the words of player or guardian: what was told since the visit before,
 * what stays and what changes.
 */
import { isGrave } from '../../findings/finding.ts'
import { planSince } from '../../recheck/changed.ts'
import { listed } from '../../words/en/format.ts'
import { questionName } from '../../words/en/question-names.ts'
import { paperName } from '../../words/names.ts'
import type { Speak } from '../../words/speak.ts'
import { capital, dateWords } from '../../words/words.ts'
import { heading, say } from '../base.ts'
import type { Block } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import type { Part } from '../page-one/part.ts'
import { planOf } from '../plan-of.ts'
import { isKeptFrom, linesFor, type Reader } from '../reader.ts'
import { waits } from '../waits.ts'
import { sinceRows } from './rows.ts'

/** A held page says what must be done now: it is no note of a re-check. */
export const isNote = (input: ReportInput): boolean =>
	input.visit.since !== undefined && !waits(planOf(input).gate, 'sport')
/** Whether a part of the plan is another than it was: there its page says how. */
export function isOtherNow(input: ReportInput, ...subjects: readonly string[]): boolean {
	const { changed } = planSince(input.visit, input.assessment, input.decisions)
	return changed.some((id) => subjects.includes(id.split('.')[0] ?? id))
}
/** What a trouble asks for, and cautions of conditions, as the clinician left them standing. */
const carefulLines = (reader: Reader, input: ReportInput): string[] =>
	linesFor(reader, input)
		.filter(
			({ topic, level }) => topic === 'recheck' || (topic === 'conditions' && isGrave({ level })),
		)
		.map(({ says }) => says)
export const sinceTold: Part = (input, reader, t) => {
	const { since, player } = input.visit
	if (!since || !isNote(input)) return []
	const rows = sinceRows(input, t, 'player')
		.filter(({ topic }) => topic === undefined || !isKeptFrom(reader, input, topic))
		.map(({ label, text }) => ({ label, text }))
	const date = dateWords(since.visitDate)
	const title =
		reader.audience === 'guardian'
			? t('since.titleGuardian', { name: paperName(player).givenName, date })
			: t('since.title', { date })
	const lines = carefulLines(reader, input)
	return [
		heading(title),
		...(rows.length > 0 ? [{ kind: 'facts' as const, rows }] : []),
		...(lines.length > 0 ? [{ kind: 'list' as const, items: lines }] : []),
	]
}
const partNames: Readonly<Record<string, 'since.part.load' | 'since.part.owned'>> = {
	complaint: 'since.part.load',
	owned: 'since.part.owned',
}
const partsIn = (ids: readonly string[], t: Speak): string => {
	const named = ids
		.filter((id) => id !== 'review')
		.map((id) => (partNames[id] ? t(partNames[id]) : questionName(id)))
	return named.length > 0 ? capital(listed([...new Set(named)])) : ''
}
/** Of which subject a competent minor may keep what from a guardian. */
const topics: Readonly<Record<string, 'footwear' | 'insert'>> = {
	insert: 'insert',
	raise: 'insert',
	size: 'footwear',
	pair: 'footwear',
	owned: 'footwear',
	changes: 'footwear',
	lacing: 'footwear',
}
export const staysAndChanges: Part = (input, reader, t): Block[] => {
	if (!isNote(input)) return []
	const isShown = (id: string) => {
		const topic = topics[id.split('.')[0] ?? id]
		return topic === undefined || !isKeptFrom(reader, input, topic)
	}
	const plan = planSince(input.visit, input.assessment, input.decisions)
	const stays = partsIn(plan.stays.filter(isShown), t)
	const changed = partsIn(plan.changed.filter(isShown), t)
	const gone = partsIn(plan.gone.filter(isShown), t)
	const said = [
		...(stays ? [say(t('since.stays', { parts: stays }))] : []),
		...(changed ? [say(t('since.changes', { parts: changed }))] : []),
		...(gone ? [say(t('since.gone', { parts: gone }))] : []),
	]
	return said.length > 0 ? [heading(t('since.plan')), ...said] : []
}
