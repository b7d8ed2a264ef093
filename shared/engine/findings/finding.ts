/** What the engine says: always a finding with its reasons and basis, never loose text. */
import type { Basis, Because } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'

export type FindingSide = 'left' | 'right' | 'both' | 'none'
export type Topic =
	| 'sizing'
	| 'ankle'
	| 'posture'
	| 'growth'
	| 'screening'
	| 'footwear'
	| 'loading'
	| 'insert'
	| 'season'
	| 'measure'
export type Level = 'note' | 'advise' | 'caution' | 'stop'
export interface Finding {
	/** Stable id: topic.rule or topic.rule.side */
	id: string
	topic: Topic
	side: FindingSide
	level: Level
	/** Plain sentence for clinician, player and guardian alike. */
	says: string
	because: Because[]
	basis: Basis
}
/** What a room says: the id is made of topic, rule and side. */
export function sayFinding({
	topic,
	rule,
	side,
	level,
	says,
	because,
	basis,
}: Omit<Finding, 'id'> & { rule: string }): Finding {
	return { id: `${topic}.${rule}.${side}`, topic, side, level, says, because, basis }
}
/** A measured or computed number that a finding rests on, to one decimal for reading. */
export const reading = (measure: string, value: number, unit: string): Because => ({
	measure,
	value: rounded(value, 1),
	unit,
})
/**
 * How a shown number was worked out: the formula with this player's numbers put in, line by line,
 * in plain text.
 */
export interface Working {
	/** Stable id: topic.what or topic.what.side */
	id: string
	title: string
	lines: string[]
	basis: Basis
}
/**
 * A text typed by a person as part of an id: letters a to z, digits and hyphens only, made unique
 * by its place in the list (from 0).
 */
export function idPart(typed: string, index: number): string {
	const plain = typed
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, '-')
		.replace(/^-+|-+$/g, '')
	return plain === '' ? `${index + 1}` : `${plain}-${index + 1}`
}
