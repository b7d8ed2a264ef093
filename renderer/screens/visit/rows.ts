/**
 * A signed visit as rows for reading: every field that holds something, by its title and unit of
 * the visit schema. Pure.
 */

import type { SignedVisit } from '../../../shared/contract.ts'
import { leafWords } from '../../../shared/desk/records/leaf-words.ts'
import { isLeaf, sideOf, titleOf, valueWords } from '../../../shared/desk/records/told.ts'
import type { KeptAssessment } from '../../../shared/engine/findings/assessment.ts'
import { choiceWords } from '../../../shared/engine/visit/decisions.ts'
import { privateTopicAt } from '../../../shared/engine/visit/private.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'

type Loose = Readonly<Record<string, unknown>>
export interface Row {
	key: string
	title: string
	/** one value, or left and right */
	values: readonly string[]
}
export interface Group {
	title: string
	rows: readonly Row[]
	sided: boolean
}
const groups: Readonly<Record<Exclude<keyof Visit, 'format' | 'version' | 'visitDate'>, string>> = {
	player: 'Player',
	complaint: 'What brought the player',
	since: 'Since the visit before',
	insertWorn: 'The insert that was worn',
	play: 'Play',
	body: 'Body',
	feet: 'Feet',
	ankles: 'Ankles',
	posture: 'Posture',
	conditions: 'Conditions',
	screening: 'Flags',
	coreSetAside: 'Core questions that were not asked',
	outcomes: 'Outcomes of what was held',
	means: 'Pairs that may be bought',
	footwear: 'Pairs',
	season: 'Season',
	notMeasured: 'Not measured',
	notes: 'Clinical notes',
}
interface Leaf {
	path: string
	value: unknown
}
function leaves(value: unknown, path: string): Leaf[] {
	if (value === undefined || (Array.isArray(value) && value.length === 0)) return []
	return isLeaf(value)
		? [{ path, value }]
		: Object.entries(value as Loose).flatMap(([key, inner]) => leaves(inner, `${path}.${key}`))
}
const wordsOf = ({ path, value }: Leaf): string => leafWords(path, value)
/** One row a field; left and right of the same measure share it. */
function measureRows(found: readonly Leaf[]): Row[] {
	const sided = found.some(({ path }) => sideOf(path) !== undefined)
	const rows = new Map<string, Row & { values: string[] }>()
	for (const leaf of found) {
		const side = sideOf(leaf.path)
		const bare = leaf.path.replace(/(^|\.)(left|right)(?=\.|$)/, '$1')
		const values = rows.get(bare)?.values ?? (sided && side ? ['', ''] : [''])
		values[values.length === 2 && side === 'right' ? 1 : 0] = wordsOf(leaf)
		rows.set(bare, { key: leaf.path, title: titleOf(leaf.path), values })
	}
	return [...rows.values()]
}
/** The reasons for what was not measured, each by the path of its field. */
const reasonRows = (found: readonly Leaf[]): Row[] =>
	found.map((leaf) => {
		const side = sideOf(leaf.path)
		const title = titleOf(leaf.path.slice('notMeasured.'.length))
		return {
			key: leaf.path,
			title: side ? `${title}, ${side}` : title,
			values: [wordsOf(leaf)],
		}
	})
/**
 * All fields of the visit that hold something, in the order of the form; left and right beside each
 * other. A safeguarding note is read in the assessment alone.
 */
export function groupsOf(visit: SignedVisit['visit']): Group[] {
	return Object.entries(groups).flatMap(([key, title]) => {
		const found = leaves((visit as Loose)[key], key).filter(
			({ path }) => privateTopicAt(path) !== 'safeguarding',
		)
		if (found.length === 0) return []
		const rows = key === 'notMeasured' ? reasonRows(found) : measureRows(found)
		return [{ title, rows, sided: rows.some((row) => row.values.length === 2) }]
	})
}
/** The frozen assessment, as the engine of its time wrote it. */
export const assessmentOf = ({ assessment }: SignedVisit): KeptAssessment =>
	assessment as KeptAssessment
/** What was decided about each finding, in the words that stand. */
export function decisionRows(
	signed: SignedVisit,
): { key: string; says: string; choice: string; why: string }[] {
	const words = new Map(assessmentOf(signed).findings.map((finding) => [finding.id, finding.says]))
	return signed.decisions.lines.map((line) => ({
		key: line.findingId,
		says: line.says?.trim() || words.get(line.findingId) || titleOf(line.findingId),
		choice: choiceWords[line.choice],
		why: line.why ?? '',
	}))
}
/** The decisions that are no lines and no answers, as rows; the agreement stands by itself. */
export function otherDecisions({ decisions }: SignedVisit): Row[] {
	const { lines: _lines, answers: _answers, agreement: _agreement, ...rest } = decisions
	return leaves(rest, 'decisions').map(({ path, value }) => {
		const side = sideOf(path)
		return {
			key: path,
			title: `${titleOf(path.slice('decisions.'.length))}${side ? `, ${side}` : ''}`,
			values: [valueWords(value)],
		}
	})
}
