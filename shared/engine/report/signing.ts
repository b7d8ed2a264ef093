/**
 * What keeps a visit from being signed: the screen asks it before its button, the host again before
 * anything is frozen. Pure.
 */
import type { Assessment } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Decisions, overtakenLine, standingLine } from '../visit/decisions.ts'
import { actionWords } from '../words/words.ts'
import { overtakenMarks } from './marked.ts'

/** Notes and advice may stand undecided: they are printed in the words of the suggestion. */
export const quiet = ({ level }: Pick<Finding, 'level'>): boolean =>
	level === 'note' || level === 'advise'
/**
 * True once a choice stands; a change counts when its words differ from the engine's. What was
 * decided about other words is asked again.
 */
export function isDecided(decisions: Decisions, id: string, words = ''): boolean {
	const line = standingLine(decisions, id, words)
	if (!line) return false
	return line.choice !== 'change' || (!!line.says?.trim() && line.says.trim() !== words.trim())
}
/** True where screening asks for more than a letter, so that what was done must be written down. */
export const refers = ({ screening }: Pick<Assessment, 'screening'>): boolean =>
	screening.action !== 'proceed' && screening.action !== 'letter'
/** The higher of the two raises in mm; 0 where none. */
export const highestRaise = ({ heelRaiseMm }: Decisions): number =>
	Math.max(heelRaiseMm?.left ?? 0, heelRaiseMm?.right ?? 0)

interface SigningBlock {
	path: string
	says: string
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
/**
 * @returns one sentence each, with its remedy; none where the visit may be signed
 */
export function signingBlocks(
	{ decisions, raw }: Entries,
	assessment: Assessment | undefined,
	protocol: Protocol,
): SigningBlock[] {
	if (!assessment)
		return [
			{
				path: 'visit',
				says: 'The findings cannot be worked out from the entries. Look through the earlier steps.',
			},
		]
	const draft: Draft = { decisions, raw, assessment, protocol }
	return reasons.flatMap((reason) => reason(draft))
}

type Reason = (draft: Draft) => SigningBlock[]
const undecided: Reason = ({ assessment, decisions }) => {
	const open = assessment.findings.filter(
		(finding) => !quiet(finding) && !isDecided(decisions, finding.id, finding.says),
	).length
	if (open === 0) return []
	return [
		{
			path: 'decisions.lines',
			says: `Caution and stop findings without a decision: ${open}. Decide each one in Decide.`,
		},
	]
}
/**
 * Words of the clinician, or a line left out, on what is no longer so; an accepted note is printed
 * as it reads now.
 */
const overtakenNotes: Reason = ({ assessment, decisions }) => {
	const overtaken = assessment.findings.filter(
		(finding) =>
			quiet(finding) &&
			['change', 'drop'].includes(overtakenLine(decisions, finding.id, finding.says)?.choice ?? ''),
	).length
	if (overtaken === 0) return []
	return [
		{
			path: 'decisions.lines',
			says:
				'Notes or advice that read otherwise than when you changed or dropped them: ' +
				`${overtaken}. Look at them again in Decide.`,
		},
	]
}
const overtakenModelsAndWork: Reason = ({ assessment, decisions }) => {
	const marks = overtakenMarks(decisions, assessment).length
	if (marks === 0) return []
	return [
		{
			path: 'decisions.lines',
			says:
				`Models to try or changes to the boot that would print as they read before: ${marks}. ` +
				'Take the new words, or take the mark off, in Decide.',
		},
	]
}
const notYetValues: Reason = ({ raw }) => {
	const [first, ...others] = Object.keys(raw)
	if (first === undefined) return []
	return [
		{
			path: first,
			says: `Fields that are not a value yet: ${others.length + 1}. Correct or clear each one.`,
		},
	]
}
const linesWithoutWords: Reason = ({ decisions }) =>
	decisions.lines.flatMap(({ choice, findingId, says }) => {
		if (says?.trim()) return []
		if (choice === 'change')
			return [
				{
					path: 'decisions.lines',
					says:
						`A changed line has no words (${findingId}). Write the words that stand, or accept ` +
						'or drop it.',
				},
			]
		if (choice === 'add')
			return [
				{
					path: 'decisions.lines',
					says: `Your own line ${findingId.replace('own.', '')} is empty. Write it or remove it.`,
				},
			]
		return []
	})
const highRaiseWithoutReason: Reason = ({ decisions, protocol }) => {
	const mostMm = protocol.value('ankle.raiseStopMm')
	if (highestRaise(decisions) <= mostMm || decisions.heelRaiseWhy?.trim()) return []
	return [
		{
			path: 'decisions.heelRaiseWhy',
			says: `The heel raise is above ${mostMm} mm. Write the reason in Decide, or lower it.`,
		},
	]
}
const referralNotRecorded: Reason = ({ assessment, decisions }) => {
	if (!refers(assessment) || decisions.referralDone?.trim()) return []
	return [
		{
			path: 'decisions.referralDone',
			says:
				`Screening asks for ${actionWords[assessment.screening.action]}. Write in Decide what ` +
				'was done about it.',
		},
	]
}
const consentNotNoted: Reason = ({ decisions }) => {
	if (decisions.consentNoted === true) return []
	return [
		{
			path: 'decisions.consentNoted',
			says: 'Consent is not noted. Tick it once it was given and noted.',
		},
	]
}
/** In the order in which the screen lists them. */
const reasons: readonly Reason[] = [
	undecided,
	overtakenNotes,
	overtakenModelsAndWork,
	notYetValues,
	linesWithoutWords,
	highRaiseWithoutReason,
	referralNotRecorded,
	consentNotNoted,
]
