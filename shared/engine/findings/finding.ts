/** What the engine says: always a finding with its reasons and basis, never loose text. */
import type { Basis, Because } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import type { Statement } from '../words/statement.ts'

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
	| 'raise'
	| 'season'
	| 'conditions'
	| 'measure'
	| 'recheck'
	| 'onfoot'
export type Level = 'note' | 'advise' | 'caution' | 'stop'
/** A danger, or a caution: it is read, and never folded away. */
export const isGrave = ({ level }: { level?: Level | undefined }): boolean =>
	level === 'stop' || level === 'caution'
/** Findings in the records of earlier versions have no code: they are read as `Stated`. */
export interface Finding extends Statement {
	/** Stable id: topic.rule or topic.rule.side, unique in an assessment */
	id: string
	topic: Topic
	side: FindingSide
	level: Level
	because: Because[]
	basis: Basis
}
interface Found {
	side: FindingSide
	level: Level
	because: Because[]
	basis: Basis
	/** What tells it from another finding of the same code and side: a pair, an element. */
	of?: string
	/** Where the id is older than the rule of ids. */
	id?: string
}
/**
 * A finding. The code says topic and rule ('ankle.restricted'); the id is code, what it is of and
 * side. @param statement from `state(code, params)`
 */
export function findingOf(
	statement: Statement,
	{ side, level, because, basis, of, id }: Found,
): Finding {
	const topic = statement.code.split('.')[0] as Topic
	const own = [statement.code, ...(of === undefined ? [] : [of]), side].join('.')
	return { id: id ?? own, ...statement, topic, side, level, because, basis }
}
/**
 * A measured or computed number that a finding rests on, to one decimal for reading. @param measure
 * a measure of the visit by its key, or a name of words/en/readings.ts
 */
export const reading = (measure: string, value: number, unit: string, side?: Side): Because =>
	side === undefined
		? { measure, value: rounded(value, 1), unit }
		: { measure, side, value: rounded(value, 1), unit }
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
