/** Who reads a document: only what there are words for that reader, and what that reader was told. */
import { isMinor } from '../facts/age.ts'
import { openProtocol } from '../protocol/protocol.ts'
import { type ReleasableTopic, toldTo } from '../words/privacy.ts'
import type { Audience } from '../words/sentence.ts'
import { isOpenTo, privateTopicOf, type Stated, spokenTo } from '../words/statement.ts'
import { type StandingLine, standingLines } from './decided.ts'
import type { ReportInput } from './inputs.ts'
import { medicinesAsked } from './medicines.ts'

export interface Reader {
	audience: Audience
	/** Private topics that this reader may be told of. */
	told: readonly ReleasableTopic[]
}
/**
 * The reader of a document about one visit. @param handedTo through whose hands it goes, where not
 * straight to its reader
 */
export const readerOf = (
	audience: Audience,
	{
		visit,
		decisions,
		protocol = openProtocol(),
	}: Pick<ReportInput, 'visit' | 'decisions' | 'protocol'>,
	handedTo: Audience = audience,
): Reader => ({
	audience,
	told: toldTo(handedTo, decisions.released, isMinor(visit, protocol)),
})
/** Whether a competent minor asked that the guardian is not shown this. */
export const isKeptFrom = (
	{ audience }: Reader,
	{ withheld = [] }: Pick<ReportInput, 'withheld'>,
	what: NonNullable<ReportInput['withheld']>[number],
): boolean => audience === 'guardian' && withheld.includes(what)
/** A statement in the reader's words; undefined where it does not reach the reader. */
export const toldBy = ({ audience, told }: Reader, statement: Stated): string | undefined =>
	spokenTo(audience, statement, told)

/**
 * The lines that stand after the decisions and reach the reader: in the reader's words, or as the
 * clinician typed them; what is private stays so in any words.
 */
export function linesFor(
	reader: Reader,
	{ assessment, decisions }: Pick<ReportInput, 'assessment' | 'decisions'>,
): StandingLine[] {
	return standingLines(assessment, decisions).flatMap((line) => {
		const { finding, typed } = line
		if (typed) return finding === undefined || isOpenTo(reader.told, finding) ? [line] : []
		const says = finding && toldBy(reader, finding)
		return says === undefined ? [] : [{ ...line, says }]
	})
}
/** For whom a kind of page about a visit is written; the pages for a club hold closed words only. */
const readers: Readonly<Record<string, Audience>> = {
	player: 'player',
	guardian: 'guardian',
	referral: 'doctor',
}
/**
 * Whether a page of a visit may hold what is private: a report or a letter what was stated of it to
 * its reader, an order for a laboratory body mass. @param kind a kind of document
 */
export function mayHoldPrivate(
	kind: string,
	input: Pick<ReportInput, 'visit' | 'assessment' | 'decisions' | 'protocol'>,
): boolean {
	if (kind === 'insert-order') return input.visit.body?.massKg !== undefined
	const audience = Object.hasOwn(readers, kind) ? readers[kind] : undefined
	if (audience === undefined) return false
	const reader = readerOf(audience, input)
	const { findings, screening } = input.assessment
	if (audience === 'doctor' && medicinesAsked(input.visit).length > 0) return true
	const isOpen = (statement: Stated) =>
		privateTopicOf(statement) !== undefined && isOpenTo(reader.told, statement)
	const isTyped = (id: string) =>
		input.decisions.lines.some((line) => line.findingId === id && line.choice === 'change')
	return (
		screening.items.some((item) => item.state === 'yes' && isOpen(item)) ||
		findings.some(
			(finding) =>
				isOpen(finding) && (toldBy(reader, finding) !== undefined || isTyped(finding.id)),
		)
	)
}
