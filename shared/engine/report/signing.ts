/**
 * What keeps a visit from being signed: the screen asks it before its button, the host again before
 * anything is frozen. Pure.
 */
import { isMinor } from '../facts/age.ts'
import { isHeld } from '../facts/held.ts'
import type { Assessment } from '../findings/assessment.ts'
import { overtakenDecision } from '../insert/decided.ts'
import { answerTo } from '../prescription/answers.ts'
import { openNow, settledPlan } from '../prescription/settled.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Decisions, overtakenLine } from '../visit/decisions.ts'
import { twoOf } from '../visit/entry-at.ts'
import { bothSides } from '../visit/sides.ts'
import type { TypedTwice } from '../visit/typed-twice.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { agreementBlocks } from './agreement-blocks.ts'
import { overtakenMarks } from './marked.ts'

/** True where screening asks for more than a letter, so that what was done must be written down. */
export const refers = ({ screening }: Pick<Assessment, 'screening'>): boolean =>
	screening.action !== 'proceed' && screening.action !== 'letter'
/** The higher of the two raises in mm; 0 where none. */
const highestRaise = ({ heelRaiseMm }: Decisions): number =>
	Math.max(heelRaiseMm?.left ?? 0, heelRaiseMm?.right ?? 0)

/** Why a visit cannot be signed: what is so by its code, and where. */
interface SigningBlock extends Statement {
	path: string
}
interface Entries {
	visit: Visit
	decisions: Decisions
	/** Fields that are not a value yet, as typed. */
	raw: Readonly<Record<string, string>>
	/** Which of its entries were typed twice; without them none was. */
	typedTwice?: readonly TypedTwice[] | undefined
}
interface Draft extends Entries {
	assessment: Assessment
	protocol: Protocol
}
const linesPath = 'decisions.lines'
/**
 * @returns one reason each, with its remedy; none where the visit may be signed
 */
export function signingBlocks(
	entries: Entries,
	assessment: Assessment | undefined,
	protocol: Protocol,
): SigningBlock[] {
	if (!assessment) return [{ path: 'visit', ...state('signing.not-assessed') }]
	const draft: Draft = { ...entries, assessment, protocol }
	return reasons.flatMap((reason) => reason(draft))
}

type Reason = (draft: Draft) => SigningBlock[]
const answersPath = 'decisions.answers'
const gateParts = ({ prescription: { gate } }: Assessment) => [gate.person, gate.left, gate.right]
/** Behind a stop the gate, what was done and the letter are signed at once; the rest may wait. */
export const gateFirst = ({ prescription: { gate } }: Assessment): boolean => isHeld(gate, 'sport')
/** Each caution is read inside its question. */
const openStill: Reason = ({ assessment, decisions }) => {
	const open = openNow(assessment, decisions).filter(
		({ id }) => id === 'gate' || !gateFirst(assessment),
	)
	return open.length === 0
		? []
		: [
				{
					path: answersPath,
					...state('signing.open-questions', { questions: open.map(({ id }) => id) }),
				},
			]
}
/**
 * Core questions that nobody asked are asked, or set aside with why; taking note is not enough.
 * Behind a stop nobody is kept waiting for them.
 */
const gateNotEstablished: Reason = ({ assessment, decisions }) => {
	const gate = assessment.prescription.questions.find(({ id }) => id === 'gate')
	const unasked = [
		...new Set(
			gateParts(assessment).flatMap((part) =>
				part.state === 'not-established' ? part.unasked : [],
			),
		),
	]
	const isSetAside = gate && answerTo(decisions, gate)?.choice === 'set-aside'
	return unasked.length === 0 || isSetAside || gateFirst(assessment)
		? []
		: [{ path: 'visit.screening', ...state('signing.gate-not-established', { unasked }) }]
}
/**
 * Words of the clinician, or a line left out, on what is no longer so; what was accepted is printed
 * as it reads now.
 */
const overtakenLines: Reason = ({ assessment, decisions }) => {
	const findings = assessment.findings.filter((finding) =>
		['change', 'drop'].includes(overtakenLine(decisions, finding.id, finding)?.choice ?? ''),
	).length
	return findings === 0
		? []
		: [{ path: linesPath, ...state('signing.overtaken-notes', { findings }) }]
}
/** A figure of the clinician's, or an element left out, where something else is proposed now. */
const overtakenElements: Reason = ({ assessment, decisions }) => {
	const elements = bothSides.flatMap((side) =>
		assessment.insert[side].elements.filter((element) =>
			overtakenDecision(element, decisions.insert?.[side] ?? []),
		),
	).length
	return elements === 0
		? []
		: [{ path: 'decisions.insert', ...state('signing.overtaken-elements', { elements }) }]
}
const overtakenModelsAndWork: Reason = ({ assessment, decisions }) => {
	const marks = overtakenMarks(decisions, assessment).length
	return marks === 0 ? [] : [{ path: linesPath, ...state('signing.overtaken-marks', { marks }) }]
}
/** Of two entries of one field one is chosen by a person. */
const twoTyped: Reason = ({ visit, decisions, raw, typedTwice = [] }) =>
	typedTwice.map((line) => ({
		path: line.path,
		...state('signing.typed-twice', twoOf({ visit, decisions, raw }, line)),
	}))
const notYetValues: Reason = ({ raw }) => {
	const [first, ...others] = Object.keys(raw)
	if (first === undefined) return []
	return [{ path: first, ...state('signing.not-yet-values', { fields: others.length + 1 }) }]
}
/** What is in the record says how it stands: current, recovering or past. */
const conditionsWithoutStatus: Reason = ({ assessment }) => {
	const unsaid = assessment.missing.filter(({ path }) => /^conditions\.\d+\.status$/.test(path))
	const [first] = unsaid
	if (first === undefined) return []
	const conditions = unsaid.length
	return [{ path: first.path, ...state('signing.condition-without-status', { conditions }) }]
}
const linesWithoutWords: Reason = ({ decisions }) =>
	decisions.lines.flatMap(({ choice, findingId, says }): SigningBlock[] => {
		if (says?.trim()) return []
		if (choice === 'change')
			return [
				{
					path: linesPath,
					...state('signing.changed-without-words', { finding: findingId }),
				},
			]
		if (choice === 'add')
			return [
				{
					path: linesPath,
					...state('signing.own-line-empty', { line: findingId.replace('own.', '') }),
				},
			]
		return []
	})
/**
 * The highest that the clinician set above what is proposed in that pair, mm; a raise that is held
 * or set aside is none. A proposal has its reasons beside it.
 */
function highestOwn({ assessment, decisions }: Draft): number {
	const { raise } = settledPlan(assessment, decisions)
	const proposedIn = (id: string) =>
		assessment.prescription.raise.pairs.find(({ pair }) => pair === id)
	const own = raise.pairs.flatMap((pair) =>
		bothSides
			.filter((side) => pair[side].addMm > (proposedIn(pair.pair)?.[side].addMm ?? 0))
			.map((side) => pair[side].addMm),
	)
	return Math.max(0, ...own)
}
const raiseReason = ({ heelRaiseWhy, answers = [] }: Decisions): string =>
	heelRaiseWhy?.trim() ||
	answers.findLast(({ question }) => question === 'raise')?.why?.trim() ||
	''
const highRaiseWithoutReason: Reason = (draft) => {
	const limitMm = draft.protocol.value('ankle.raiseStopMm')
	const highestMm = Math.max(highestOwn(draft), highestRaise(draft.decisions))
	if (highestMm <= limitMm || raiseReason(draft.decisions) !== '') return []
	return [{ path: 'decisions.heelRaiseWhy', ...state('signing.raise-without-reason', { limitMm }) }]
}
const referralNotRecorded: Reason = ({ assessment, decisions }) => {
	if (!refers(assessment) || decisions.referralDone?.trim()) return []
	const { action } = assessment.screening
	return [{ path: 'decisions.referralDone', ...state('signing.referral-not-recorded', { action }) }]
}
const notAgreed: Reason = ({ visit, assessment, decisions, protocol }) =>
	agreementBlocks(decisions.agreement, {
		minor: isMinor(visit, protocol),
		urgent: gateFirst(assessment),
		player: visit.player,
	})
/** In the order in which the screen lists them. */
const reasons: readonly Reason[] = [
	openStill,
	gateNotEstablished,
	overtakenLines,
	overtakenElements,
	overtakenModelsAndWork,
	twoTyped,
	notYetValues,
	conditionsWithoutStatus,
	linesWithoutWords,
	highRaiseWithoutReason,
	referralNotRecorded,
	notAgreed,
]
