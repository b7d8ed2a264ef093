/**
 * What keeps a visit from being signed: the screen asks it before its button, the host again before
 * anything is frozen. Pure.
 */
import type { Assessment } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { overtakenDecision } from '../insert/decided.ts'
import type { Protocol } from '../protocol/protocol.ts'
import {
	type DecidedOn,
	type Decisions,
	hasOwnWords,
	overtakenLine,
	standingLine,
} from '../visit/decisions.ts'
import { bothSides } from '../visit/sides.ts'
import { type Statement, state } from '../words/statement.ts'
import { overtakenMarks } from './marked.ts'

/** Notes and advice may stand undecided: they are printed in the words of the suggestion. */
export const quiet = ({ level }: Pick<Finding, 'level'>): boolean =>
	level === 'note' || level === 'advise'
/**
 * True once a choice stands; a change counts once words are written that are not the suggestion's.
 * What was decided about another content is asked again.
 */
export function isDecided(decisions: Decisions, id: string, now?: DecidedOn): boolean {
	const line = standingLine(decisions, id, now)
	return line !== undefined && (line.choice !== 'change' || hasOwnWords(line))
}
/** True where screening asks for more than a letter, so that what was done must be written down. */
export const refers = ({ screening }: Pick<Assessment, 'screening'>): boolean =>
	screening.action !== 'proceed' && screening.action !== 'letter'
/** The higher of the two raises in mm; 0 where none. */
export const highestRaise = ({ heelRaiseMm }: Decisions): number =>
	Math.max(heelRaiseMm?.left ?? 0, heelRaiseMm?.right ?? 0)

/** Why a visit cannot be signed: what is so by its code, and where. */
interface SigningBlock extends Statement {
	path: string
}
interface Entries {
	decisions: Decisions
	/** Fields that are not a value yet, as typed. */
	raw: Readonly<Record<string, string>>
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
	{ decisions, raw }: Entries,
	assessment: Assessment | undefined,
	protocol: Protocol,
): SigningBlock[] {
	if (!assessment) return [{ path: 'visit', ...state('signing.not-assessed') }]
	const draft: Draft = { decisions, raw, assessment, protocol }
	return reasons.flatMap((reason) => reason(draft))
}

type Reason = (draft: Draft) => SigningBlock[]
const undecided: Reason = ({ assessment, decisions }) => {
	const findings = assessment.findings.filter(
		(finding) => !quiet(finding) && !isDecided(decisions, finding.id, finding),
	).length
	return findings === 0 ? [] : [{ path: linesPath, ...state('signing.undecided', { findings }) }]
}
/**
 * Words of the clinician, or a line left out, on what is no longer so; an accepted note is printed
 * as it reads now.
 */
const overtakenNotes: Reason = ({ assessment, decisions }) => {
	const findings = assessment.findings.filter(
		(finding) =>
			quiet(finding) &&
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
const notYetValues: Reason = ({ raw }) => {
	const [first, ...others] = Object.keys(raw)
	if (first === undefined) return []
	return [{ path: first, ...state('signing.not-yet-values', { fields: others.length + 1 }) }]
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
const highRaiseWithoutReason: Reason = ({ decisions, protocol }) => {
	const limitMm = protocol.value('ankle.raiseStopMm')
	if (highestRaise(decisions) <= limitMm || decisions.heelRaiseWhy?.trim()) return []
	return [{ path: 'decisions.heelRaiseWhy', ...state('signing.raise-without-reason', { limitMm }) }]
}
const referralNotRecorded: Reason = ({ assessment, decisions }) => {
	if (!refers(assessment) || decisions.referralDone?.trim()) return []
	const { action } = assessment.screening
	return [{ path: 'decisions.referralDone', ...state('signing.referral-not-recorded', { action }) }]
}
const consentNotNoted: Reason = ({ decisions }) =>
	decisions.consentNoted === true
		? []
		: [{ path: 'decisions.consentNoted', ...state('signing.consent-not-noted') }]
/** In the order in which the screen lists them. */
const reasons: readonly Reason[] = [
	undecided,
	overtakenNotes,
	overtakenElements,
	overtakenModelsAndWork,
	notYetValues,
	linesWithoutWords,
	highRaiseWithoutReason,
	referralNotRecorded,
	consentNotNoted,
]
