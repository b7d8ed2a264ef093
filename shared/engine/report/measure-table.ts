/** The measures that a reader's table has: which ones, and by what name, their definitions say. */
import { catalogue, isNumber, type Placed, type sections } from '../visit/measures/catalogue.ts'
import type { None } from '../visit/measures/measure.ts'
import { asNumber, pathOn, recordedAt } from '../visit/measures/value.ts'
import { bothSides } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { unitOf } from '../words/en/format.ts'
import type { Speak } from '../words/speak.ts'
import { shown } from '../words/words.ts'

type Reader = 'player' | 'doctor' | 'laboratory'
type Tables = (typeof sections)[keyof typeof sections]['measures']
type Each<Table> = Table extends unknown ? Table[keyof Table] : never
type LineOf<Measure> = Measure extends { report: infer Lines }
	? Lines extends Readonly<Record<Reader, infer Line>>
		? Line
		: never
	: never
type Text<Key extends Parameters<Speak>[0]> = Key
/** A definition that names a text which does not exist is refused here by the compiler. */
type LineText = Text<Exclude<LineOf<Each<Tables>>, None | 'label'>>

/** What is counted or scored is called so in its row already. */
const bareUnits: ReadonlySet<string> = new Set(['points', 'rises', 'count'])
/** The unit of a number that is written with one. */
const unitIn = ({ measure }: Placed): string | undefined =>
	isNumber(measure) && !bareUnits.has(measure.unit) ? measure.unit : undefined

/** What one side has, without its unit; undefined where it was not taken. */
function taken(visit: Visit, placed: Placed, side: Side): string | undefined {
	const recorded = recordedAt(visit, pathOn(placed, side))
	if (recorded === undefined) return undefined
	const { measure } = placed
	if (!isNumber(measure)) return termWords(String(recorded))
	const value = asNumber(measure, recorded)
	return value === undefined ? undefined : shown(value)
}
interface Row {
	placed: Placed
	/** The text that names it; 'label': by its own. */
	line: LineText | 'label'
	name: string
}
/** The measures of a side that the reader is shown. */
const rowsFor = (reader: Reader, t: Speak): Row[] =>
	catalogue.flatMap((placed) => {
		const { report, label } = placed.measure
		const said = report === 'none' ? 'none' : report[reader]
		if (said === 'none' || !placed.sided) return []
		const line = said as LineText | 'label'
		return [{ placed, line, name: line === 'label' ? label : t(line) }]
	})
/**
 * A row each measure that was taken on a side at least: its name with the unit, left, right; a side
 * that was not taken has a dash.
 * @param butNot lines that the reader is told otherwise
 */
export const measuredNumbers = (
	reader: Reader,
	visit: Visit,
	t: Speak,
	butNot: readonly (LineText | 'label')[] = [],
): string[][] =>
	rowsFor(reader, t).flatMap(({ placed, line, name }) => {
		const cells = bothSides.map((side) => taken(visit, placed, side))
		if (butNot.includes(line) || cells.every((words) => words === undefined)) return []
		const unit = unitIn(placed)
		const named = unit === undefined ? name : `${name}, ${unitOf(2, unit)}`
		return [[named, ...cells.map((words) => words ?? '–')]]
	})
