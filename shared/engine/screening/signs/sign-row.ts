/**
 * A sign: a conclusion that the answers of one group of questions lead to. Tri-state throughout:
 * not asked stays not asked.
 */
import type { Action } from '../../findings/assessment.ts'
import type { FindingSide } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import type { Basis, Strength } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Screening, Side } from '../../visit/visit.ts'
import type { Statement } from '../../words/statement.ts'
import type { Tri } from '../answers.ts'
import type { Screened } from '../conclusions.ts'

type SignContext = Pick<Screened, 'minor' | 'ageYears' | 'decimalAgeYears' | 'protocol'>
interface SignFacts {
	action: Action
	minorAction?: Action
}
interface SignReading {
	side: FindingSide
	holds?: Tri
	says: Statement
	/**
	 * What is said where the answers are all there and it does not hold: never that anything is
	 * cleared.
	 */
	notMet?: Statement
}
export interface SignRow extends SignFacts {
	/** The first part of its ids: decisions in records name it. */
	id: string
	/** One reading a side that was asked about; none where the group was not opened. */
	read(answers: Screening, context: SignContext): SignReading[]
	basis(protocol: Protocol): Basis
}
/** Where a sign comes from: a source of its own, or the threshold that decides it. */
export type Ground = { source: string; strength: Strength } | { key: ThresholdKey }
interface Sign<Answers> extends SignFacts {
	holds(answers: Answers, context: SignContext): Tri
	says(answers: Answers, context: SignContext): Statement
	/** Undefined where the sign is not about these answers at all. */
	notMet?(answers: Answers, context: SignContext): Statement | undefined
	ground: Ground
}

type Group = keyof Screening
type SidedGroup = {
	[Name in Group]-?: NonNullable<Screening[Name]> extends { side: 'left' | 'right' | 'both' }
		? Name
		: never
}[Group]
type GroupOfFeet = 'neurological' | 'vascular'
type GroupOfPerson = 'neurological' | 'vascular' | 'lowEnergy' | 'inflammatory'

const basisOf =
	(group: Group, ground: Ground): SignRow['basis'] =>
	(protocol) =>
		'key' in ground ? protocol.basis(group, ground.key) : { rule: group, ...ground }

/** Within how many hours a young player is imaged. */
export const youngImaging = ({ minor, protocol }: Pick<SignContext, 'minor' | 'protocol'>) => ({
	minor,
	hours: protocol.value('screening.youngImagingHours'),
})
/** What the answers come to on a side. */
const readingOf = <Answers>(
	{ holds, says, notMet }: Sign<Answers>,
	side: FindingSide,
	answers: Answers,
	context: SignContext,
): SignReading =>
	present({
		side,
		holds: holds(answers, context),
		says: says(answers, context),
		notMet: notMet?.(answers, context),
	})
const rowOf = <Answers>(
	id: string,
	group: Group,
	{ action, minorAction, ground }: Sign<Answers>,
	read: SignRow['read'],
): SignRow => present({ id, action, minorAction, basis: basisOf(group, ground), read })

/** A sign from a group that names its side. */
export const signOfSide = <Name extends SidedGroup>(
	group: Name,
	id: string,
	sign: Sign<NonNullable<Screening[Name]>>,
): SignRow =>
	rowOf(id, group, sign, (all, context) => {
		const answers = all[group]
		return answers
			? [readingOf(sign, (answers as { side: FindingSide }).side, answers, context)]
			: []
	})
/** A sign of each foot, from a group that has both. */
export const signOfEachFoot = <Name extends GroupOfFeet>(
	group: Name,
	id: string,
	sign: Sign<NonNullable<NonNullable<Screening[Name]>[Side]>>,
): SignRow =>
	rowOf(id, group, sign, (all, context) =>
		bothSides.flatMap((side) => {
			const foot = all[group]?.[side]
			return foot ? [readingOf(sign, side, foot, context)] : []
		}),
	)
/** A sign of the whole person. */
export const signOfPerson = <Name extends GroupOfPerson>(
	group: Name,
	id: string,
	sign: Sign<NonNullable<Screening[Name]>>,
): SignRow =>
	rowOf(id, group, sign, (all, context) => {
		const answers = all[group]
		return answers ? [readingOf(sign, 'none', answers, context)] : []
	})
