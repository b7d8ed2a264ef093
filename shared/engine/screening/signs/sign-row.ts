/**
 * A sign: a conclusion that the answers of one group of questions lead to. Tri-state throughout:
 * not asked stays not asked.
 */
import type { Action } from '../../findings/assessment.ts'
import type { FindingSide } from '../../findings/finding.ts'
import type { Basis, Strength } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { bothSides } from '../../visit/sides.ts'
import type { Screening, Side } from '../../visit/visit.ts'
import type { Tri } from '../answers.ts'
import type { Screened } from '../conclusions.ts'

type SignContext = Pick<Screened, 'minor' | 'ageYears' | 'decimalAgeYears' | 'protocol'>
interface SignWords {
	id: string
	action: Action
	minorAction?: Action
	says: string
	/**
	 * What is said where the answers are all there and it does not hold: never that anything is
	 * cleared.
	 */
	notMet?: string
}
export interface SignRow extends SignWords {
	/** One reading a side that was asked about; none where the group was not opened. */
	read(answers: Screening, context: SignContext): { side: FindingSide; holds: Tri }[]
	basis(protocol: Protocol): Basis
}
/** Where a sign comes from: a source of its own, or the threshold that decides it. */
export type Ground = { source: string; strength: Strength } | { key: ThresholdKey }
interface Sign<Answers> extends SignWords {
	holds(answers: Answers, context: SignContext): Tri
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

/** A sign from a group that names its side. */
export function signOfSide<Name extends SidedGroup>(
	group: Name,
	{ holds, ground, ...words }: Sign<NonNullable<Screening[Name]>>,
): SignRow {
	return {
		...words,
		basis: basisOf(group, ground),
		read: (all, context) => {
			const answers = all[group]
			return answers
				? [{ side: (answers as { side: FindingSide }).side, holds: holds(answers, context) }]
				: []
		},
	}
}
/** A sign of each foot, from a group that has both. */
export function signOfEachFoot<Name extends GroupOfFeet>(
	group: Name,
	{ holds, ground, ...words }: Sign<NonNullable<NonNullable<Screening[Name]>[Side]>>,
): SignRow {
	return {
		...words,
		basis: basisOf(group, ground),
		read: (all, context) =>
			bothSides.flatMap((side) => {
				const foot = all[group]?.[side]
				return foot ? [{ side, holds: holds(foot, context) }] : []
			}),
	}
}
/** A sign of the whole person. */
export function signOfPerson<Name extends GroupOfPerson>(
	group: Name,
	{ holds, ground, ...words }: Sign<NonNullable<Screening[Name]>>,
): SignRow {
	return {
		...words,
		basis: basisOf(group, ground),
		read: (all, context) => {
			const answers = all[group]
			return answers ? [{ side: 'none', holds: holds(answers, context) }] : []
		},
	}
}
