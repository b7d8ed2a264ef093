/** The plan in a few facts: complaint, size, raise, insert, changes, review. */

import { saidConditions } from '../../conditions/query.ts'
import { bothSides } from '../../visit/sides.ts'
import { adjustmentLine } from '../../words/en/insert-adjust.ts'
import { elementText } from '../../words/en/insert-names.ts'
import { questionName } from '../../words/en/question-names.ts'
import type { Speak } from '../../words/speak.ts'
import {
	capital,
	conditionInWords,
	dateWords,
	shown,
	sideWords,
	sizeShown,
} from '../../words/words.ts'
import { adjustmentsOf, keptInsertOf } from '../adjustments-of.ts'
import type { Section } from '../base.ts'
import type { BlockOf } from '../document.ts'
import type { ReportInput } from '../inputs.ts'
import { insertOf } from '../insert-of.ts'
import { workKey, workTitle } from '../marked.ts'
import { planOf } from '../plan-of.ts'
import { labelsOf } from '../player/size-labels.ts'
import { raiseLines } from '../raise-lines.ts'
import { buyingWaits, waits } from '../waits.ts'
import { unasked } from './gate.ts'

type Fact = BlockOf<'facts'>['rows'][number]
/** Undefined where there is nothing to say. */
type Told = (input: ReportInput, t: Speak) => string | undefined

const complaint: Told = ({ visit }, t) => {
	const recorded = saidConditions(visit)
		.filter(({ status }) => status !== 'past')
		.map((one) =>
			[
				conditionInWords(one, 'clinician'),
				sideWords[one.side],
				one.status,
				one.painWorst === undefined ? '' : t('referral.pain', { pain: one.painWorst }),
			]
				.filter(Boolean)
				.join(', '),
		)
	return capital([visit.complaint?.trim(), ...recorded].filter(Boolean).join('; ')) || undefined
}
/** Weeks of a return, where sport is not held. */
const load: Told = (input, t) => {
	const { returnSteps = [] } = input.assessment.loading
	if (returnSteps.length === 0 || waits(planOf(input).gate, 'sport')) return undefined
	return t('sheet.returnIn', { weeks: returnSteps.length })
}
const size: Told = (input, t) => {
	const { visit, assessment } = input
	const { gate, size: settled } = planOf(input)
	const { fitLengthMm } = assessment.sizing
	if (fitLengthMm === undefined) return t('common.notMeasured')
	const fit = t('sheet.fitLength', { mm: shown(fitLengthMm) })
	if (buyingWaits(gate)) return `${fit}; ${t('squad.waits')}`
	if (!settled.boots) return fit
	const labels = labelsOf(visit, assessment.sizing).map(([system, { label }]) =>
		t('guardian.label', { system, size: sizeShown(label) }),
	)
	const { min, max } = settled.boots
	return [t('player.inside', { min: shown(min), max: shown(max) }), ...labels, fit].join('; ')
}
const raise: Told = (input, t) => {
	const plan = planOf(input)
	if (waits(plan.gate, 'raise')) return t('sheet.isHeld')
	return raiseLines(plan, input.visit, t).join('; ') || t('referral.none')
}
const insert: Told = (input, t) => {
	const { gate } = planOf(input)
	const standing = insertOf(input)
	const kept = keptInsertOf(input)
	if (kept) {
		const lines = adjustmentsOf(input)?.lines.map(adjustmentLine) ?? []
		return [t('sheet.insertKept', { date: dateWords(kept.orderedOn) }), ...lines].join('; ')
	}
	const said = bothSides.map((side) => ({
		side,
		says: waits(gate, 'insert', side)
			? t('sheet.isHeld')
			: standing[side].map(({ element }) => elementText(element)).join(', ') || t('referral.none'),
	}))
	const alike = Map.groupBy(said, ({ says }) => says)
	return [...alike]
		.map(([says, sides]) => (sides.length > 1 ? says : `${sides[0]?.side}: ${says}`))
		.join('; ')
}
/** Names of what is done to pairs and of ways to lace; while sport is held, repairs alone. */
const work =
	(which: 'modifications' | 'lacing'): Told =>
	(input) => {
		const plan = planOf(input)
		const repairs = plan.owned.flatMap((pair) => pair.work)
		const chosen = waits(plan.gate, 'sport') ? [] : [...plan.changes, ...plan.lacing]
		const ids = new Set([...repairs, ...chosen])
		const names = (input.assessment.footwear[which] ?? [])
			.filter((one) => ids.has(workKey(one)) || ids.has(one.id))
			.map((one) => workTitle(one))
		return [...new Set(names)].join('; ') || undefined
	}
const review: Told = (input, t) => {
	const { review: planned } = planOf(input)
	return planned ? dateWords(planned.date) : t('coach.noDate')
}
/** What a draft, or a record signed behind a stop, has not settled. */
const open: Told = (input) =>
	planOf({ ...input, draft: true })
		.open.map(questionName)
		.join(', ') || undefined

export const inShort: Section = (input, _notes, t) => {
	const told: [string, string | undefined][] = [
		[t('sheet.complaint'), complaint(input, t)],
		[t('sheet.load'), load(input, t)],
		[t('sheet.size'), size(input, t)],
		[t('sheet.raise'), raise(input, t)],
		[t('sheet.insert'), insert(input, t)],
		[t('sheet.changes'), work('modifications')(input, t)],
		[t('sheet.lacing'), work('lacing')(input, t)],
		[t('sheet.review'), review(input, t)],
		[t('sheet.open'), open(input, t)],
		[t('sheet.unasked'), unasked(input)],
	]
	const rows = told.flatMap(([label, text]): Fact[] => (text ? [{ label, text }] : []))
	return [{ kind: 'facts', rows }]
}
