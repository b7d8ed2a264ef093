/** At most three things to do, each with who and by when. */
import type { Gate } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Speak } from '../../words/speak.ts'
import type { Stated } from '../../words/statement.ts'
import { dateWords } from '../../words/words.ts'
import { heading, say, small } from '../base.ts'
import type { Block, BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { planOf } from '../plan-of.ts'
import { prioritiesNow } from '../priorities-now.ts'
import { isKeptFrom, type Reader, toldBy } from '../reader.ts'
import { buyingWaits, waits } from '../waits.ts'
import { concernOf } from './danger.ts'
import { headsWithPairs } from './head.ts'
import type { Part } from './part.ts'
import { shopInside } from './shop.ts'
import { whoFor } from './who.ts'

const mostActions = 3
type ActionItem = BlockOf<'actions'>['items'][number]

/** What a priority is about: it is silent while that waits. */
const silentWhile: Readonly<Record<string, (gate: Gate) => boolean>> = {
	'priority.raise': (gate) => waits(gate, 'raise'),
	'priority.insert': (gate) => bothSides.every((side) => waits(gate, 'insert', side)),
	'priority.adjust-insert': (gate) => bothSides.every((side) => waits(gate, 'insert', side)),
	'priority.replace': buyingWaits,
	'priority.buy': buyingWaits,
}
/** What a priority is about, where a competent minor may ask that it is not shown. */
const topicOf: Readonly<Record<string, NonNullable<ReportInput['withheld']>[number]>> = {
	'priority.raise': 'insert',
	'priority.insert': 'insert',
	'priority.adjust-insert': 'insert',
	'priority.replace': 'footwear',
	'priority.buy': 'footwear',
	'priority.modify': 'footwear',
	'priority.mend-first': 'footwear',
	'priority.stop-wearing': 'footwear',
}
/** What the head and its facts say already. */
const ofHead: ReadonlySet<string> = new Set(['priority.act', 'priority.clear'])
const ofHeldPage: ReadonlySet<string> = new Set([
	'priority.stop-wearing',
	'priority.mend-first',
	'priority.review',
])
const ofPairsInHead: ReadonlySet<string> = new Set(['priority.stop-wearing', 'priority.mend-first'])
function isSaid({ code = '' }: Stated, reader: Reader, input: ReportInput): boolean {
	const { gate } = planOf(input)
	const concern = concernOf(input)
	const topic = topicOf[code]
	if (silentWhile[code]?.(gate) || (topic && isKeptFrom(reader, input, topic))) return true
	if (concern && ofHead.has(code)) return true
	if (concern?.stops.includes('sport') && ofHeldPage.has(code)) return true
	return ofPairsInHead.has(code) && headsWithPairs(input, reader)
}
/** What replaces the pair that the head names, where its length is known. */
function replacement(reader: Reader, input: ReportInput, t: Speak): string | undefined {
	if (!headsWithPairs(input, reader)) return undefined
	const inside = shopInside(input)
	return inside ? t('pageOne.getPair', inside) : t('pageOne.getOther')
}
/** The clinician's own actions, or the priorities of the plan. */
function actionsOf(reader: Reader, input: ReportInput, t: Speak): ActionItem[] {
	const { decisions, visit } = input
	if (decisions.actions.length > 0) return decisions.actions
	const { does } = whoFor(reader, input, t)
	return prioritiesNow(input)
		.flatMap((priority): ActionItem[] => {
			const { code, when, who } = priority
			const instead = code === 'priority.replace' ? replacement(reader, input, t) : undefined
			const what = isSaid(priority, reader, input)
				? undefined
				: (instead ?? toldBy(reader, priority))
			if (what === undefined) return []
			const isNow = when <= visit.visitDate
			return [
				{
					what,
					when: isNow ? t('player.whenNow') : t('player.whenBy', { date: dateWords(when) }),
					who: does[who] ?? t('common.notStated'),
				},
			]
		})
		.slice(0, mostActions)
}
/** Whether the day of the review stands among the things to do. */
export const saysReview = (reader: Reader, input: ReportInput): boolean =>
	input.decisions.actions.length === 0 &&
	prioritiesNow(input).some(
		(priority) => priority.code === 'priority.review' && !isSaid(priority, reader, input),
	)
/** A draft says that what nobody decided is only proposed: once, for the whole page. */
export const proposed: Part = (input, _reader, t) =>
	input.draft && (input.decisions.actions.length === 0 || planOf(input).open.length > 0)
		? [small(t('player.proposed'))]
		: []
/** Nothing hurts, nothing is changed or bought, and nothing but the day of the review is to be done. */
function isAtRest(input: ReportInput, items: readonly ActionItem[], hasReview: boolean): boolean {
	const { visit, decisions } = input
	const { questions, changes, lacing, pairs } = planOf(input)
	return (
		questions.length > 0 &&
		decisions.actions.length === 0 &&
		items.length === (hasReview ? 1 : 0) &&
		changes.length + lacing.length === 0 &&
		pairs.every(({ means }) => means === 'keep') &&
		!visit.complaint?.trim() &&
		!visit.conditions?.some(({ status }) => status === 'current')
	)
}
/** What to do first; nothing more where the head and its facts say it all. */
export const toDo: Part = (input, reader, t) => {
	const items = actionsOf(reader, input, t)
	const isHeaded = concernOf(input) !== undefined || headsWithPairs(input, reader)
	if (items.length === 0 && isHeaded) return []
	const rest: Block[] =
		!isHeaded && isAtRest(input, items, saysReview(reader, input))
			? [{ kind: 'text', tone: 'lead', text: t('pageOne.nothing') }]
			: []
	if (items.length === 0)
		return rest.length > 0 ? rest : [heading(t('player.doNow')), say(t('player.nothingDecided'))]
	return [...rest, heading(t('player.doNow')), { kind: 'actions', items }]
}
