/** The programme as CPLEX LP text, in a fixed order, with fixed decimals. */
import { gathered, type Model, type Row, type Term, worth } from './programme.ts'
import { nameOf } from './variables.ts'

const mostWorn = nameOf({ is: 'most-worn' })
/** Six decimals at most, no exponent. */
const decimal = (value: number): string => {
	const text = value.toFixed(6).replace(/\.?0+$/, '')
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
/** Rows that hold what the first pass reached: its unmet wishes, and its suitability. */
function rowsThatKeep(model: Model, first: ReadonlyMap<string, number>): Row[] {
	const wishes = gathered(model.tier1).map(
		([, variable]): Row => ({
			name: `fix_${variable}`,
			terms: [[1, variable]],
			sense: '<=',
			right: Math.max(0, Math.round((first.get(variable) ?? 0) * 1e6) / 1e6),
		}),
	)
	if (model.tier2.length === 0) return wishes
	const suitability = worth(model.tier2, first) + 0.0005
	return [...wishes, { name: 'keep', terms: model.tier2, sense: '<=', right: suitability }]
}
/**
 * LP text of a pass. Pass 2 needs the values of the first: its unmet wishes are fixed and its
 * suitability kept.
 */
export function lpText(model: Model, first?: ReadonlyMap<string, number>): string {
	const rows = first ? [...model.rows, ...rowsThatKeep(model, first)] : model.rows
	const goal = gathered(first ? model.tier3 : [...model.tier1, ...model.tier2]).filter(
		([factor]) => factor !== 0,
	)
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
