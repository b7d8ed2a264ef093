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
export const quiet = (one: Pick<Finding, 'level'>): boolean =>
	one.level === 'note' || one.level === 'advise'
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

export interface SigningBlock {
	path: string
	says: string
}
/**
 * @param raw fields that are not a value yet, as typed. @returns one sentence each, with its
 * remedy; none where the visit may be signed
 */
export function signingBlocks(
	{ decisions, raw }: { decisions: Decisions; raw: Readonly<Record<string, string>> },
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
	const blocks: SigningBlock[] = []
	const add = (path: string, says: string) => {
		blocks.push({ path, says })
	}
	const open = assessment.findings.filter(
		(finding) => !quiet(finding) && !isDecided(decisions, finding.id, finding.says),
	).length
	if (open > 0)
		add(
			'decisions.lines',
			`Caution and stop findings without a decision: ${open}. Decide each one in Decide.`,
		)
	// words of the clinician, or a line left out, on what is no longer so; an accepted note is
	// printed as it reads now
	const overtaken = assessment.findings.filter(
		(finding) =>
			quiet(finding) &&
			['change', 'drop'].includes(overtakenLine(decisions, finding.id, finding.says)?.choice ?? ''),
	).length
	if (overtaken > 0)
		add(
			'decisions.lines',
			`Notes or advice that read otherwise than when you changed or dropped them: ${overtaken}. ` +
				'Look at them again in Decide.',
		)
	const marks = overtakenMarks(decisions, assessment).length
	if (marks > 0)
		add(
			'decisions.lines',
			`Models to try or changes to the boot that would print as they read before: ${marks}. ` +
				'Take the new words, or take the mark off, in Decide.',
		)
	const [first] = Object.keys(raw)
	if (first !== undefined)
		add(
			first,
			`Fields that are not a value yet: ${Object.keys(raw).length}. Correct or clear each one.`,
		)
	for (const { choice, findingId, says } of decisions.lines) {
		if (says?.trim()) continue
		if (choice === 'change')
			add(
				'decisions.lines',
				`A changed line has no words (${findingId}). Write the words that stand, or accept or ` +
					'drop it.',
			)
		if (choice === 'add')
			add(
				'decisions.lines',
				`Your own line ${findingId.replace('own.', '')} is empty. Write it or remove it.`,
			)
	}
	const most = protocol.value('ankle.raiseStopMm')
	if (highestRaise(decisions) > most && !decisions.heelRaiseWhy?.trim())
		add(
			'decisions.heelRaiseWhy',
			`The heel raise is above ${most} mm. Write the reason in Decide, or lower it.`,
		)
	if (refers(assessment) && !decisions.referralDone?.trim())
		add(
			'decisions.referralDone',
			`Screening asks for ${actionWords[assessment.screening.action]}. Write in Decide what was ` +
				'done about it.',
		)
	if (decisions.consentNoted !== true)
		add('decisions.consentNoted', 'Consent is not noted. Tick it once it was given and noted.')
	return blocks
}
