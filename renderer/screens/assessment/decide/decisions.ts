/** What the Decide and Sign steps do to a draft. Pure. */

import type { DraftContent } from '../../../../shared/contract.ts'
import { metaOf } from '../../../../shared/desk/records/told.ts'
import type {
	Assessment,
	FeatureWish,
	PerSide,
} from '../../../../shared/engine/findings/assessment.ts'
import type { Finding, Level } from '../../../../shared/engine/findings/finding.ts'
import { isDecided, quiet } from '../../../../shared/engine/report/signing.ts'
import {
	aboutOf,
	type DecidedOn,
	type Decision,
	type Decisions,
	decisionsSchema,
	overtakenLine,
} from '../../../../shared/engine/visit/decisions.ts'
import type { Feature } from '../../../../shared/engine/visit/terms.ts'
import { clinicProtocol as protocol } from '../../../parts/clinicProtocol.ts'
import { parseDate } from '../../../parts/parseDate.ts'
import { parseNumber } from '../../../parts/parseNumber.ts'

export type Choice = 'accept' | 'change' | 'drop'
export const levels: readonly { level: Level; title: string }[] = [
	{ level: 'stop', title: 'Stop' },
	{ level: 'caution', title: 'Caution' },
	{ level: 'advise', title: 'Advise' },
	{ level: 'note', title: 'Note' },
]
/** Heel raises (mm) above which the screen warns, or asks for a reason, with their basis. */
export const raiseLimits = {
	get warnMm() {
		return protocol.value('ankle.raiseWarnMm')
	},
	get warnBasis() {
		return protocol.basis('Heel raise in a boot: warn above', 'ankle.raiseWarnMm')
	},
	get stopMm() {
		return protocol.value('ankle.raiseStopMm')
	},
	get stopBasis() {
		return protocol.basis('Heel raise in a boot: reason required above', 'ankle.raiseStopMm')
	},
}

/** Puts `patch` into the decisions; a key given as undefined is taken out. */
export function decide(
	draft: DraftContent,
	patch: { [K in keyof Decisions]?: Decisions[K] | undefined },
): DraftContent {
	const decisions = Object.fromEntries(
		Object.entries({ ...draft.decisions, ...patch }).filter(([, value]) => value !== undefined),
	)
	return { ...draft, decisions: decisions as Decisions }
}
export const lineOf = (draft: DraftContent, id: string): Decision | undefined =>
	draft.decisions.lines.find((line) => line.findingId === id)
function put(draft: DraftContent, id: string, line: Decision | undefined): DraftContent {
	const { lines } = draft.decisions
	if (!line) return decide(draft, { lines: lines.filter((other) => other.findingId !== id) })
	return decide(draft, {
		lines: lineOf(draft, id)
			? lines.map((other) => (other.findingId === id ? line : other))
			: [...lines, line],
	})
}
/**
 * Records a choice; null takes the decision back. @param on what is decided about: its words are
 * offered for changing unless the clinician wrote others before
 */
export function choose(
	draft: DraftContent,
	id: string,
	choice: Choice | null,
	on?: DecidedOn,
): DraftContent {
	if (!choice) return put(draft, id, undefined)
	const { why, says } = lineOf(draft, id) ?? {}
	return put(draft, id, {
		findingId: id,
		choice,
		...(choice === 'change' ? { says: says ?? on?.says ?? '' } : {}),
		...(why && choice !== 'accept' ? { why } : {}),
		...(on ? aboutOf(on) : {}),
	})
}
/** Changes the words of a line that is there. */
export function reword(
	draft: DraftContent,
	id: string,
	words: { says?: string; why?: string },
): DraftContent {
	const line = lineOf(draft, id)
	return line ? put(draft, id, { ...line, ...words }) : draft
}
export const removeLine = (draft: DraftContent, id: string): DraftContent =>
	put(draft, id, undefined)
export const ownLines = (draft: DraftContent): Decision[] =>
	draft.decisions.lines.filter((line) => line.choice === 'add')
/** Adds an empty line of the clinician's own, numbered after the highest there is. */
export function addOwn(draft: DraftContent): DraftContent {
	const highest = Math.max(
		0,
		...ownLines(draft).map((line) => Number(line.findingId.replace('own.', '')) || 0),
	)
	const id = `own.${highest + 1}`
	return put(draft, id, { findingId: id, choice: 'add', says: '' })
}
/**
 * Notes and advice without a decision, or accepted when they were others; what was changed or
 * dropped when it was another is looked at singly.
 */
export const leftQuiet = (draft: DraftContent, findings: readonly Finding[]): Finding[] =>
	findings.filter(
		(finding) =>
			quiet(finding) &&
			(!lineOf(draft, finding.id) ||
				overtakenLine(draft.decisions, finding.id, finding)?.choice === 'accept'),
	)
/** Accepts the notes and advice without a decision; caution and stop are never accepted in bulk. */
export function acceptQuiet(draft: DraftContent, findings: readonly Finding[]): DraftContent {
	return leftQuiet(draft, findings).reduce(
		(now, finding) => choose(now, finding.id, 'accept', finding),
		draft,
	)
}
export interface MergedWish {
	id: string
	feature: Feature
	reasons: FeatureWish[]
}
/** One row per feature, its reasons gathered, in the order first wished. */
export function mergeWishes(kind: 'seek' | 'avoid', wishes: readonly FeatureWish[]): MergedWish[] {
	const rows = new Map<Feature, MergedWish>()
	for (const wish of wishes) {
		const row = rows.get(wish.feature)
		if (row) row.reasons.push(wish)
		else
			rows.set(wish.feature, {
				id: `${kind}.${wish.feature}`,
				feature: wish.feature,
				reasons: [wish],
			})
	}
	return [...rows.values()]
}
export const wishesOf = (assessment: Assessment): MergedWish[] => [
	...mergeWishes('seek', assessment.footwear.target.seek),
	...mergeWishes('avoid', assessment.footwear.target.avoid),
]
/**
 * The findings to decide one by one; a footwear rule is decided by its features instead, so that
 * nothing is asked twice.
 */
export function findingsToDecide(assessment: Assessment): Finding[] {
	const { seek, avoid } = assessment.footwear.target
	const byFeature = new Set([...seek, ...avoid].map((wish) => `footwear.${wish.rule}`))
	return assessment.findings.filter((finding) => !byFeature.has(finding.id))
}
export const undecidedFindings = (draft: DraftContent, assessment: Assessment): Finding[] =>
	findingsToDecide(assessment).filter((finding) => !isDecided(draft.decisions, finding.id, finding))
export const undecidedWishes = (draft: DraftContent, assessment: Assessment): MergedWish[] =>
	wishesOf(assessment).filter((wish) => !isDecided(draft.decisions, wish.id))

const raisePath = (side: keyof PerSide<string>) => `decisions.heelRaiseMm.${side}`
/** What the two heel raise boxes show of a draft. */
export function raiseTexts(draft: DraftContent): PerSide<string> {
	const text = (side: 'left' | 'right') =>
		draft.raw[raisePath(side)] ?? draft.decisions.heelRaiseMm?.[side].toString() ?? ''
	return { left: text('left'), right: text('right') }
}
const raiseSchema = decisionsSchema.shape.heelRaiseMm.unwrap().shape.left
/** Reads one heel raise in mm. */
export function readRaise(text: string): { mm?: number; says: string } {
	if (text.trim() === '') return { says: '' }
	const parsed = parseNumber(text, 'mm')
	if (!parsed.ok) return { says: parsed.says }
	const [mm, more] = parsed.values
	if (mm === undefined || more !== undefined)
		return { says: `'${text}' holds more than one number. Type one heel raise in mm.` }
	if (!raiseSchema.safeParse(mm).success)
		return {
			says: `'${text}' is not allowed; give ${raiseSchema.minValue} to ${raiseSchema.maxValue} mm.`,
		}
	return { mm, says: '' }
}
/** Keeps both raises as numbers once both are, else as raw text so that nothing typed is lost. */
export function setRaise(draft: DraftContent, texts: PerSide<string>): DraftContent {
	const { [raisePath('left')]: _left, [raisePath('right')]: _right, ...raw } = draft.raw
	const left = readRaise(texts.left).mm,
		right = readRaise(texts.right).mm
	if (left !== undefined && right !== undefined)
		return decide({ ...draft, raw }, { heelRaiseMm: { left, right } })
	for (const side of ['left', 'right'] as const)
		if (texts[side].trim()) raw[raisePath(side)] = texts[side]
	return decide({ ...draft, raw }, { heelRaiseMm: undefined })
}
export type ActionRow = Decisions['actions'][number]
const actionPath = 'decisions.actions.'
/** The three rows of 'What to do now'; rows without a 'what' are kept as raw text. */
export function actionRows(draft: DraftContent): ActionRow[] {
	const rows = [...draft.decisions.actions]
	for (const at of ['1', '2', '3']) {
		const when = draft.raw[`${actionPath}${at}.when`] ?? '',
			who = draft.raw[`${actionPath}${at}.who`] ?? ''
		if (when || who) rows.push({ what: '', when, who })
	}
	while (rows.length < 3) rows.push({ what: '', when: '', who: '' })
	return rows.slice(0, 3)
}
export function setActions(draft: DraftContent, rows: readonly ActionRow[]): DraftContent {
	const raw = Object.fromEntries(
		Object.entries(draft.raw).filter(([path]) => !path.startsWith(actionPath)),
	)
	rows.forEach((row, index) => {
		if (row.what.trim()) return
		for (const key of ['when', 'who'] as const)
			if (row[key].trim()) raw[`${actionPath}${index + 1}.${key}`] = row[key]
	})
	return decide({ ...draft, raw }, { actions: rows.filter((row) => row.what.trim()) })
}

/** A field that is not a value yet, in words: its label and the text typed. */
export function rawWords(path: string, text: string): string {
	const side = /\.(left|right)(\.|$)/.exec(path)?.[1]
	const label = path.startsWith('decisions.heelRaiseMm')
		? 'Heel raise (give both sides; 0 for none)'
		: path.startsWith(actionPath)
			? `What to do now, row ${path.split('.')[2]}: say what, or clear the row`
			: titleOf(path)
	return `${label}${side ? `, ${side}` : ''}: '${text}'`
}
// list rows and cards have paths the reader of single fields does not know
const titleOf = (path: string): string => metaOf(path)?.title ?? path
export const reviewPath = 'decisions.reviewDate'
/** Keeps the review date once it is one, else the text as typed. */
export function setReview(draft: DraftContent, text: string): DraftContent {
	const { [reviewPath]: _, ...raw } = draft.raw
	if (text.trim() === '') return decide({ ...draft, raw }, { reviewDate: undefined })
	const read = parseDate(text)
	return read.ok
		? decide({ ...draft, raw }, { reviewDate: read.iso })
		: decide({ ...draft, raw: { ...raw, [reviewPath]: text } }, { reviewDate: undefined })
}
