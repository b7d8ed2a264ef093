/**
 * The insert order: per side the complete design, the insert at true size, and a slip for the
 * laboratory to send back.
 */
import { type DecidedElement, type DecidedInsert, decidedInsert } from '../insert/decided.ts'
import { elementWords } from '../insert/element-words.ts'
import { insertSheets } from '../insert/outline/outline.ts'
import { openProtocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Side } from '../visit/visit.ts'
import { sideWords } from '../words/en.table.ts'
import type { Speak } from '../words/speak.ts'
import { capital, dateWords, shown } from '../words/words.ts'
import {
	frame,
	heading,
	Notes,
	nameOf,
	playsOf,
	type ReportInput,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import type { Block, LwDocument } from './document.ts'

const places = (t: Speak) => ({
	boot: t('order.inBoot'),
	trainer: t('order.inTrainer'),
	both: t('order.inBoth'),
})
const nameOfElement = (element: string): string =>
	capital((elementWords as Record<string, string>)[element] ?? termWords(element))
const amountOf = ({ value, unit, choice }: DecidedElement['element'], t: Speak): string =>
	[value === undefined ? '' : `${shown(value)} ${unit ?? ''}`.trim(), choice ?? '']
		.filter(Boolean)
		.join(', ') || t('common.yes')
function remarkOf({ element, decision }: DecidedElement, t: Speak): string {
	const range =
		element.range && element.value !== undefined
			? t('order.within', {
					min: element.range[0],
					max: element.range[1],
					unit: element.unit ?? '',
				}).trim()
			: ''
	return [
		decision === undefined || decision.choice === 'accept'
			? t('order.asProposed')
			: t('order.decided', { why: decision.why ?? '' }),
		decision?.says ?? '',
		range,
	]
		.filter(Boolean)
		.join('; ')
}
/** The insert that stands after the decisions, by the protocol of the assessment. */
export const standingInsert = ({
	visit,
	assessment,
	decisions,
	protocol,
}: Pick<ReportInput, 'visit' | 'assessment' | 'decisions' | 'protocol'>): DecidedInsert =>
	decidedInsert(visit, assessment, decisions, protocol ?? openProtocol())

function design(
	{ result, ...elements }: DecidedInsert,
	side: Side,
	notes: Notes,
	t: Speak,
): Block[] {
	const title = heading(t(`common.${side}`), { level: 2 })
	if (result[side].state === 'stopped')
		return [
			title,
			{
				kind: 'alert',
				title: t(`common.${side}`),
				text: t('order.stopped', {
					reasons: result[side].stoppedBy.map((one) => one.says).join(' '),
				}),
			},
		]
	const ordered = elements[side]
	if (ordered.length === 0) return [title, say(t('order.notNeeded'))]
	// every element of the catalogue stands in the table, so that what is not wanted is said as well
	const known = Object.keys(elementWords)
	const all = [
		...known,
		...ordered.map(({ element }) => element.element).filter((element) => !known.includes(element)),
	]
	const rows = all.map((name) => {
		const one = ordered.find(({ element }) => element.element === name)
		return one
			? [
					nameOfElement(name),
					amountOf(one.element, t),
					places(t)[one.element.where],
					remarkOf(one, t),
				]
			: [nameOfElement(name), t('order.none'), '', '']
	})
	const basis = [...new Set(ordered.map(({ element }) => notes.mark(element.basis)))].join(' ')
	const cautions = [...new Set(ordered.flatMap(({ element }) => element.cautions))]
	return [
		title,
		{
			kind: 'table',
			caption: `${t('order.designCaption')}. ${capital(sideWords[side])}. ${basis}`.trim(),
			head: [t('order.element'), t(`common.${side}`), t('order.where'), t('common.why')],
			rows,
			widths: [120, 96, 74, '*'],
		},
		...(cautions.length > 0 ? [small(`${t('order.notes')}: ${cautions.join(' ')}`)] : []),
	]
}
function trueSize(
	{ visit, protocol }: ReportInput,
	{ left, right }: DecidedInsert,
	t: Speak,
): Block[] {
	const foot = (side: Side, elements: readonly DecidedElement[]) => {
		const feet = visit.feet?.[side]
		return {
			measures: {
				lengthMm: meanOf(feet?.heelToToeMm),
				ballLengthMm: meanOf(feet?.heelToBallMm),
				widthMm: meanOf(feet?.ballWidthMm),
				heelWidthMm: meanOf(feet?.heelWidthMm),
			},
			elements: elements.map(({ element }) => element),
		}
	}
	const { sheets, missing } = insertSheets(
		{ left: foot('left', left), right: foot('right', right) },
		protocol ?? openProtocol(),
	)
	return [
		...missing.map(({ side, measures }) =>
			say(t('order.noOutline', { side: sideWords[side], measures: measures.join(', ') })),
		),
		...sheets.map(
			({ svg, widthMm, heightMm, alternative }): Block => ({
				kind: 'true-size',
				caption: t('order.trueSizeCaption', { name: nameOf(visit) }),
				alternative,
				svg,
				widthMm,
				heightMm,
			}),
		),
	]
}
export function insertOrder(input: ReportInput): LwDocument {
	const { visit, decisions, clinic, version = 1, draft, order = {} } = input
	const standing = standingInsert(input)
	const { conflicts: pulls, wearIn } = standing.result
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const unit = (value: number | undefined) =>
		value === undefined ? t('common.notMeasured') : `${shown(value)} mm`
	const feet = (side: Side) => visit.feet?.[side]
	const rows: [string, string, string][] = [
		[t('order.foot'), ...bothSides.map((side) => unit(meanOf(feet(side)?.heelToToeMm)))],
		[t('order.ballLength'), ...bothSides.map((side) => unit(meanOf(feet(side)?.heelToBallMm)))],
		[t('order.footWidth'), ...bothSides.map((side) => unit(meanOf(feet(side)?.ballWidthMm)))],
		[t('order.instep'), ...bothSides.map((side) => unit(meanOf(feet(side)?.instepHeightMm)))],
	] as [string, string, string][]
	const shoes = (visit.footwear ?? []).map((pair) => [
		pair.name ?? pair.id,
		pair.sole ? termWords(pair.sole) : t('common.notStated'),
		unit(pair.insideLengthMm),
	])
	const stance = visit.feet?.stance
	const conflicts = pulls.map(
		(pull) => `${capital(sideWords[pull.side])}: ${pull.says} ${notes.mark(pull.basis)}`,
	)
	return {
		...frame(input, t),
		title: t('order.title'),
		kind: 'insert-order',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[
				t('subject.born'),
				`${dateWords(visit.player.birthDate)} ` +
					`(${ageYears(visit.player.birthDate, visit.visitDate)})`,
			],
			[
				t('subject.mass'),
				visit.body?.massKg === undefined
					? t('common.notMeasured')
					: `${shown(visit.body.massKg)} kg`,
			],
			[t('subject.activity'), playsOf(visit, t)],
			[t('subject.record'), order.number ?? t('common.notStated')],
			[t('subject.neededBy'), order.neededBy ? dateWords(order.neededBy) : t('common.notStated')],
			[t('subject.shipTo'), order.shipTo ?? [clinic.name, ...clinic.address].join(', ')],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks: [
			...(version > 1 && !draft
				? [
						{
							kind: 'alert',
							title: statusOf(input, t),
							text: t('order.replaces', { before: version - 1 }),
						} satisfies Block,
					]
				: []),
			say(t('order.first')),
			heading(t('order.capture')),
			{
				kind: 'table',
				caption: t('order.captureCaption'),
				head: [t('order.item'), t('coach.answer')],
				widths: [130, '*'],
				rows: [
					[
						t('order.method'),
						stance ? t('order.methodHand', { stance }) : t('order.methodUnknown'),
					],
					[
						t('order.file'),
						order.fileName
							? [order.fileName, order.sha256 ?? ''].filter(Boolean).join(', SHA-256 ')
							: t('order.fileNone'),
					],
				],
			},
			heading(t('order.feet')),
			{
				kind: 'table',
				caption: t('order.feet'),
				head: [t('order.item'), t('common.left'), t('common.right')],
				widths: ['*', 110, 110],
				rows,
			},
			...(shoes.length > 0
				? [
						{
							kind: 'table',
							caption: t('order.shoe'),
							head: [t('player.pair'), t('order.shoeType'), t('order.shoe')],
							widths: ['*', 130, 110],
							rows: shoes,
						} satisfies Block,
					]
				: []),
			heading(t('order.design')),
			...bothSides.flatMap((side) => design(standing, side, notes, t)),
			...(conflicts.length > 0
				? [
						heading(t('order.conflicts'), { level: 2 }),
						{ kind: 'list', items: conflicts } satisfies Block,
					]
				: []),
			...(wearIn.length > 0 && bothSides.some((side) => standing[side].length > 0)
				? [
						heading(t('order.wearIn'), { level: 2 }),
						{
							kind: 'list',
							items: wearIn.map((step) => `${capital(step.when)}: ${step.says}`),
						} satisfies Block,
					]
				: []),
			...(decisions.heelRaiseWhy ? [small(decisions.heelRaiseWhy)] : []),
			...signature(input, t),
			...trueSize(input, standing, t),
			heading(t('order.slip')),
			// the caption stays with its short table on one page
			{
				kind: 'table',
				caption: t('order.slipText', {
					clinic: [clinic.name, clinic.email].filter(Boolean).join(', '),
				}),
				head: [t('order.item'), t('order.slipField')],
				widths: [190, '*'],
				rows: [
					t('order.slipReceived'),
					t('order.slipReady'),
					t('order.slipQuestions'),
					t('order.slipName'),
				].map((name) => [name, t('order.slipSpace')]),
			},
		],
		notes: notes.list,
	}
}
