/** What a row of the element table is: what calls for an element, and what speaks against it. */
import type { InsertElement } from '../../findings/assessment.ts'
import type { ThresholdKey } from '../../protocol/protocol.ts'
import type { Condition } from '../../visit/terms.ts'
import type { ObjectionRule } from '../../words/en/insert-cautions.ts'
import type { ElementId } from '../../words/en/insert-names.ts'
import type { StatementCode } from '../../words/statement.ts'
import type { InsertFacts } from '../facts.ts'

/** What is looked at besides conditions, and the unit or term in which it stands. */
type ReadKey = 'fpiBand' | 'forefoot' | 'firstRay' | 'firstMtp' | 'supinationResistance'
/** A measured finding: one of these terms. */
export interface Reading {
	measure: ReadKey
	is: readonly NonNullable<InsertFacts[ReadKey]>[]
}
/** Met by any one of its conditions or readings. */
export interface Need {
	conditions?: readonly Condition[]
	/** Conditions of either side count: what is given goes into both shoes. */
	eitherSide?: true
	readings?: readonly Reading[]
}
/** What speaks against an element on the same side. */
export interface Against {
	rule: ObjectionRule
	conditions?: readonly Condition[]
	/** Its history speaks against the element as much as the condition itself. */
	past?: true
	readings?: readonly Reading[]
	/** It takes the element out; else it is said as a caution. */
	leavesOut?: true
}
/** What is always said with an element, and the rows of the figures in it. */
export interface CautionRow {
	code: StatementCode
	figures?: Readonly<Record<string, ThresholdKey>>
}
/** Finding to element. */
export interface ElementRow {
	element: ElementId
	/** Any one of these calls for it, where all needs of it are met. */
	calls: readonly (readonly Need[])[]
	key: ThresholdKey
	unit: string
	/** The rows of the usual least and most. */
	range: readonly [ThresholdKey, ThresholdKey]
	where: InsertElement['where']
	/** Its sentence; the name of the element where that is none other. */
	code?: StatementCode
	/** Whether a shell is needed to carry it; a raise or a cushion alone needs none. */
	needsShell: boolean
	against: readonly Against[]
	cautions: readonly CautionRow[]
}
export const pronated: Reading = { measure: 'fpiBand', is: ['pronated', 'highly-pronated'] }
export const supinated: Reading = { measure: 'fpiBand', is: ['supinated', 'highly-supinated'] }
/** Complaints that a flat foot gives. */
export const flatPain: readonly Condition[] = [
	'flexible-flatfoot-pain',
	'posterior-tibial-tendinopathy',
	'shin-pain',
]
/** Complaints of the outer foot and ankle. */
export const outerPain: readonly Condition[] = [
	'lateral-ankle-instability',
	'peroneal-tendinopathy',
	'cavus-foot-pain',
]
/** Complaints that a forefoot valgus or a plantarflexed first ray gives. */
export const forefootPain: readonly Condition[] = [
	'sesamoid-pain',
	'metatarsalgia',
	'cavus-foot-pain',
	'lateral-ankle-instability',
	'peroneal-tendinopathy',
]
