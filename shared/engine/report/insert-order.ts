/**
 * The insert order: per side the complete design, the insert at true size, and a slip for the
 * laboratory to send back.
 */
import { isHeld } from '../facts/held.ts'
import { ageYears } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import { bothSides } from '../visit/sides.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords, shown } from '../words/words.ts'
import { frame, heading, nameOf, playsOf, say, signature, speakOf, statusOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { Block, LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { insertOf } from './insert-of.ts'
import { design } from './insert-order/design.ts'
import { capture, feet, shoes } from './insert-order/feet-and-shoes.ts'
import { trueSize } from './insert-order/true-size.ts'
import { Notes } from './notes.ts'
import { planOf } from './plan-of.ts'
import { isRaised, raiseLines } from './raise-lines.ts'

/**
 * Prescription of one player's insert to a laboratory; nothing in it is taken from the other side.
 */
export function insertOrder(input: ReportInput): LwDocument {
	const { clinic } = input
	const standing = insertOf(input)
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const raise = raises(input, t)
	return {
		...frame(input, t),
		title: t('order.title'),
		kind: 'insert-order',
		subject: subjectOf(input, t),
		blocks: [
			...replacement(input, t),
			say(t('order.first')),
			...capture(input, t),
			...feet(input, t),
			...shoes(input, t),
			heading(t('order.design')),
			...raise,
			...bothSides.flatMap((side) =>
				design({ insert: standing, isRaised: raise.length > 0 }, side, notes, t),
			),
			...signature(input, t),
			...trueSize(input, standing, t),
			...slip(clinic, t),
		],
		notes: notes.list,
	}
}

function subjectOf(input: ReportInput, t: Speak): LwDocument['subject'] {
	const { visit, clinic, order = {} } = input
	const { birthDate } = visit.player
	const { massKg } = bodySize(visit)
	return [
		[t('subject.player'), nameOf(visit)],
		[t('subject.born'), `${dateWords(birthDate)} (${ageYears(birthDate, visit.visitDate)})`],
		[t('subject.mass'), massKg === undefined ? t('common.notMeasured') : `${shown(massKg)} kg`],
		[t('subject.activity'), playsOf(visit, t)],
		[t('subject.record'), order.number ?? t('common.notStated')],
		[t('subject.neededBy'), order.neededBy ? dateWords(order.neededBy) : t('common.notStated')],
		[t('subject.shipTo'), order.shipTo ?? [clinic.name, ...clinic.address].join(', ')],
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
	const fields = [
		t('order.slipReceived'),
		t('order.slipReady'),
		t('order.slipQuestions'),
		t('order.slipName'),
	]
	return [
		heading(t('order.slip')),
		// the caption stays with its short table on one page
		{
			kind: 'table',
			caption: t('order.slipText', {
				clinic: [clinic.name, clinic.email].filter(Boolean).join(', '),
			}),
			head: [t('order.item'), t('order.slipField')],
			widths: [190, '*'],
			rows: fields.map((name) => [name, t('order.slipSpace')]),
		},
	]
}
