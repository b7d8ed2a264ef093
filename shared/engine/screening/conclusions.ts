/** What every group of questions is given, and what it hands back. */
import type { Action, ScreeningItem } from '../findings/assessment.ts'
import type { Finding, FindingSide } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Screening, Visit } from '../visit/visit.ts'
import type { Tri } from './answers.ts'

/**
 * `ageYears` in completed years; `decimalAgeYears` where 'above 9' means from the day after the
 * birthday on.
 */
export interface Screened {
	visit: Visit
	answers: Screening
	minor: boolean
	ageYears: number
	decimalAgeYears: number
	protocol: Protocol
}
/** Items carry an action of their own; findings are what is said besides. */
export interface Conclusions {
	items: ScreeningItem[]
	findings: Finding[]
}

/** An answer, or whether a rule holds, as the state of an item. */
export const stateOf = (answer: Tri): ScreeningItem['state'] => {
	if (answer === undefined) return 'not-asked'
	return answer ? 'yes' : 'no'
}
/** An id of the screening room, with its side where it has one. */
export const sidedId = (name: string, side: FindingSide): string =>
	`screening.${name}${side === 'none' ? '' : `.${side}`}`
/** The action of a row that holds; that of a minor may be higher. */
export const actionFor = (
	row: { action: Action; minorAction?: Action | undefined },
	minor: boolean,
): Action => (minor ? (row.minorAction ?? row.action) : row.action)
/** A finding of the screening room; without reasons where none are given. */
export const screeningFinding = ({
	id,
	side,
	level,
	says,
	because = [],
	basis,
}: Omit<Finding, 'topic' | 'because'> & Partial<Pick<Finding, 'because'>>): Finding => ({
	id,
	topic: 'screening',
	side,
	level,
	says,
	because,
	basis,
})
