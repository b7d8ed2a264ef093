/** The programme as CPLEX LP text, in a fixed order, with fixed decimals. */
import type { Level } from '../problem/levels.ts'
import { gathered, type Model, type Row, type Term } from './programme.ts'
import { nameOf } from './variables.ts'

const mostWorn = nameOf({ is: 'most-worn' })
/**
 * Nine decimals at most, no exponent: what a level keeps is reckoned with whole factors, and over
 * thousands of minutes the rounding must stay far below its slack.
 */
const decimal = (value: number): string => {
	const text = value.toFixed(9).replace(/\.?0+$/, '')
	return text === '-0' ? '0' : text
}
/** Terms over lines short enough for every reader of the format. */
function wrapped(start: string, terms: readonly Term[], end = ''): string {
	const lines: string[] = []
	let line = start
	for (const [factor, variable] of gathered(terms)) {
		const piece = ` ${factor < 0 ? '-' : '+'} ${decimal(Math.abs(factor))} ${variable}`
		if (line.length + piece.length > 200) {
			lines.push(line)
			line = ' '
		}
		line += piece
	}
	return [...lines, `${line}${end}`].join('\n')
}
/** What a level may lie above the value it keeps, for the rounding of the solver. */
const slack = 0.0005
/** Rows that hold what the levels before reached. */
const rowsThatKeep = (model: Model, reached: ReadonlyMap<Level, number>): Row[] =>
	[...reached].flatMap(([level, value]) =>
		model.goals[level].length === 0
			? []
			: [{ name: `keep_${level}`, terms: model.goals[level], sense: '<=', right: value + slack }],
	)
/** LP text of one level. @param reached what each level before it reached, and keeps */
export function lpText(
	model: Model,
	level: Level,
	reached: ReadonlyMap<Level, number> = new Map(),
): string {
	const rows = [...model.rows, ...rowsThatKeep(model, reached)]
	const goal = gathered(model.goals[level]).filter(([factor]) => factor !== 0)
	const safe: Term[] = goal.length > 0 ? goal : [[0, mostWorn]]
	return [
		'Minimize',
		wrapped(' obj:', safe),
		'Subject To',
		` zz: + 1 ${mostWorn} <= 1`,
		...rows.map((row) =>
			wrapped(` ${row.name}:`, row.terms, ` ${row.sense} ${decimal(row.right)}`),
		),
		'Bounds',
		...model.bounds.map((variable) => ` 0 <= ${variable} <= 1`),
		'Binary',
		...model.binaries.map((variable) => ` ${variable}`),
		'End',
		'',
	].join('\n')
}
