/**
 * The insert order on one page: the design of both sides, the raise, feet and shoes, and a slip for
 * the laboratory to send back; then the insert at true size.
 */
import { isHeld } from '../facts/held.ts'
import { ageYears } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords, shown } from '../words/words.ts'
import { adjustmentsOf } from './adjustments-of.ts'
import { frame, heading, nameOf, playsOf, slimSignature, small, speakOf, statusOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { insertOf } from './insert-of.ts'
import { adjustment } from './insert-order/adjustment.ts'
import { design } from './insert-order/design.ts'
import { feetAndShoes } from './insert-order/feet-and-shoes.ts'
import { trueSize } from './insert-order/true-size.ts'
import { Notes } from './notes.ts'
import { planOf } from './plan-of.ts'
import { isRaised, raiseLines } from './raise-lines.ts'

/**
 * Prescription of one player's insert to a laboratory; nothing in it is taken from the other side.
 */
export function insertOrder(input: ReportInput): LwDocument {
	const { clinic } = input
	if (adjustmentsOf(input)) return insertAdjustment(input)
	const standing = insertOf(input)
	const t = speakOf(clinic)
	const notes = new Notes(t, { apart: true })
	const raise = raises(input, t)
	return {
		...paperOf(input, t),
		title: t('order.title'),
		blocks: [
			...replacement(input, t),
			small(t('order.first')),
			heading(t('order.design')),
			...design({ insert: standing, isRaised: raise.length > 0 }, notes, t),
			...raise,
			heading(t('order.feet')),
			...feetAndShoes(input, t),
			...slimSignature(input, t),
			...slip(clinic, t),
			...trueSize(input, standing, t),
		],
		notes: notes.list,
	}
}

/** What both papers for the laboratory are, whatever is asked of it. */
const paperOf = (input: ReportInput, t: Speak) =>
	({
		...frame(input, t),
		kind: 'insert-order',
		subject: subjectOf(input, t),
		print: 'compact',
		notesApart: true,
		slim: true,
	}) as const
/** The same for an insert that is worn: a short note of what is done to it. */
function insertAdjustment(input: ReportInput): LwDocument {
	const t = speakOf(input.clinic)
	return {
		...paperOf(input, t),
		title: t('adjust.title'),
		blocks: [
			...replacement(input, t),
			small(t('adjust.first')),
			...adjustment(input, t),
			...slimSignature(input, t),
			...slip(input.clinic, t),
		],
		notes: [],
	}
}

function subjectOf(input: ReportInput, t: Speak): LwDocument['subject'] {
	const { visit, clinic, decisions } = input
	const { number, laboratory, neededBy, shipTo } = decisions.order ?? {}
	const { birthDate } = visit.player
	const { massKg } = bodySize(visit)
	return [
		[t('subject.player'), nameOf(visit)],
		[t('subject.born'), `${dateWords(birthDate)} (${ageYears(birthDate, visit.visitDate)})`],
		[t('subject.mass'), massKg === undefined ? t('common.notMeasured') : `${shown(massKg)} kg`],
		[t('subject.activity'), playsOf(visit, t)],
		[t('subject.order'), number ?? t('common.notStated')],
		[t('subject.laboratory'), laboratory ?? t('common.notStated')],
		[t('subject.neededBy'), neededBy ?? t('common.notStated')],
		[t('subject.shipTo'), shipTo ?? [clinic.name, ...clinic.address].join(', ')],
		[t('subject.status'), statusOf(input, t)],
	]
}
/** An order that takes the place of another says so first. */
function replacement(input: ReportInput, t: Speak): Block[] {
	const { version = 1, draft } = input
	if (version <= 1 || draft) return []
	return [
		{
			kind: 'alert',
			title: statusOf(input, t),
			text: t('order.replaces', { before: version - 1 }),
		},
	]
}
/** The raise under the heel, one figure for each foot in each pair. */
function raises(input: ReportInput, t: Speak): Block[] {
	const plan = planOf(input)
	if (!isRaised(plan) || isHeld(plan.gate, 'raise')) return []
	return [
		heading(t('order.raise'), { level: 2 }),
		{ kind: 'list', items: raiseLines(plan, input.visit, t) },
	]
}
function slip(clinic: Clinic, t: Speak): Block[] {
	const fields = [t('order.slipDates'), t('order.slipQuestions'), t('order.slipName')]
	const back = [clinic.name, clinic.email].filter(Boolean).join(', ')
	return [
		{
			kind: 'facts',
			title: t('order.slip'),
			boxed: true,
			rows: fields.map((label) => ({ label, text: t('order.slipSpace') })),
		},
		small(t('order.slipText', { clinic: back })),
	]
}
