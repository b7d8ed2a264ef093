/** Lacing diagrams: the eyelets of one shoe seen from above, toe below, with the lace's run. */
import type { Side } from '../visit/visit.ts'
import type { LacingId } from './lacing.ts'
import type { Figure } from './sole-figure.ts'

/** Inner is the big-toe side. Rows count from the toe, 0 to 5; a half row lies between two. */
type End = readonly [row: number, column: 'inner' | 'outer' | 'middle']
interface Run {
	from: End
	to: End
	kind: 'over' | 'hidden' | 'loose' | 'second' | 'loop'
}
const rows = 6
const run = (from: End, to: End, kind: Run['kind'] = 'over'): Run => ({ from, to, kind })
const bar = (row: number, kind: Run['kind'] = 'over') => [run([row, 'inner'], [row, 'outer'], kind)]
const cross = (first: number, last: number, kind: Run['kind'] = 'over') =>
	Array.from({ length: last - first }, (_, i) => first + i).flatMap((row) => [
		run([row, 'inner'], [row + 1, 'outer'], kind),
		run([row, 'outer'], [row + 1, 'inner'], kind),
	])
const straight = (first: number, last: number, kind: Run['kind'] = 'over') =>
	Array.from({ length: last - first }, (_, i) => first + i).flatMap((row) => [
		run([row, 'inner'], [row + 1, 'inner'], kind),
		run([row, 'outer'], [row + 1, 'outer'], kind),
	])

const patterns: Record<LacingId, { runs: readonly Run[]; knot?: number; alternative: string }> = {
	'heel-lock': {
		runs: [
			...bar(0),
			...cross(0, 4),
			...straight(4, 5, 'loop'),
			run([5, 'inner'], [4.5, 'outer']),
			run([5, 'outer'], [4.5, 'inner']),
		],
		alternative:
			'Crossed up to the fifth row; at the last two rows a loop on each side, each end passing ' +
			'through the loop opposite.',
	},
	window: {
		runs: [...bar(0), ...cross(0, 2), ...straight(2, 3), ...cross(3, 5)],
		alternative:
			'Crossed up to the third row, straight up each side to the fourth row without crossing, ' +
			'then crossed again.',
	},
	'forefoot-room': {
		runs: [...bar(0), ...straight(0, 2), ...cross(2, 5)],
		alternative: 'Straight up each side past the lowest two rows, crossed from the third row on.',
	},
	'toe-lift': {
		runs: [
			run([0, 'inner'], [5, 'outer'], 'second'),
			...[1, 2, 3, 4].flatMap((row) => bar(row)),
			run([0, 'outer'], [1, 'outer'], 'hidden'),
			run([1, 'inner'], [2, 'inner'], 'hidden'),
			run([2, 'outer'], [3, 'outer'], 'hidden'),
			run([3, 'inner'], [4, 'inner'], 'hidden'),
			run([4, 'inner'], [5, 'inner'], 'hidden'),
		],
		alternative:
			'One end from the lowest hole on the big-toe side to the top hole of the other side; the ' +
			'other end as a ladder through the remaining holes.',
	},
	parallel: {
		runs: [
			...Array.from({ length: rows }, (_, row) => bar(row)).flat(),
			run([0, 'inner'], [2, 'inner'], 'hidden'),
			run([0, 'outer'], [1, 'outer'], 'hidden'),
			run([1, 'inner'], [3, 'inner'], 'hidden'),
			run([2, 'outer'], [4, 'outer'], 'hidden'),
			run([3, 'outer'], [5, 'outer'], 'hidden'),
		],
		alternative: 'Straight bars across every row, the rise hidden along the sides.',
	},
	'two-zone': {
		runs: [
			...bar(0, 'loose'),
			...cross(0, 2, 'loose'),
			...bar(3, 'second'),
			...cross(3, 5, 'second'),
		],
		alternative:
			'One lace for the lower three rows, loose; a second lace for the upper three rows, tight.',
	},
	'narrow-foot': {
		runs: [...bar(0), ...cross(0, 1), ...cross(1, 4, 'second'), ...cross(4, 5)],
		alternative: 'Crossed through the outermost holes, the middle rows drawn tightest.',
	},
	'midfoot-lock': {
		runs: [...bar(0), ...cross(0, 5)],
		knot: 2.5,
		alternative: 'Crossed all the way, with an extra turn of the knot above the third row.',
	},
}
const stroke: Record<Run['kind'], string> = {
	over: 'stroke-width="2.4"',
	hidden: 'stroke-width="1.6" stroke-dasharray="3 3"',
	loose: 'stroke-width="1.4"',
	second: 'stroke-width="3.4"',
	loop: 'stroke-width="2.4" fill="none"',
}
/** @param side the foot to draw for: only the toe lift differs between left and right */
export function lacingFigure(id: LacingId, side: Side, colour = '#0f6b5c', scale = 1): Figure {
	const pattern = patterns[id]
	const width = 110,
		height = 170
	// a left shoe seen from above has its big-toe side on the right
	const x = (column: End[1]) =>
		column === 'middle' ? 55 : (column === 'inner') === (side === 'left') ? 82 : 28
	const y = (row: number) => 150 - row * 25
	const line = ({ from, to, kind }: Run) => {
		const [x1, y1, x2, y2] = [x(from[1]), y(from[0]), x(to[1]), y(to[0])]
		if (kind !== 'loop')
			return (
				`<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" stroke="${colour}" ` +
				`${stroke[kind]}/>`
			)
		const out = x1 > 55 ? 14 : -14
		return (
			`<path d="M ${x1} ${y1} C ${x1 + out} ${y1} ${x1 + out} ${y2} ${x2} ${y2}" ` +
			`stroke="${colour}" ${stroke.loop}/>`
		)
	}
	const holes = Array.from({ length: rows }, (_, row) =>
		(['inner', 'outer'] as const)
			.map(
				(column) =>
					`<circle cx="${x(column)}" cy="${y(row)}" r="3.6" fill="#ffffff" stroke="#1d2726" ` +
					'stroke-width="1.2"/>',
			)
			.join(''),
	).join('')
	const knot =
		pattern.knot === undefined
			? ''
			: `<circle cx="55" cy="${y(pattern.knot)}" r="6" fill="${colour}"/>`
	const order = [...pattern.runs].sort(
		(a, b) => Number(b.kind === 'hidden') - Number(a.kind === 'hidden'),
	)
	const alternative =
		`${side === 'left' ? 'Left' : 'Right'} shoe seen from above, toe below. ` +
		`${pattern.alternative}`
	return {
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${alternative}" ` +
			`width="${width * scale}" height="${height * scale}" viewBox="0 0 ${width} ` +
			`${height}">${order.map(line).join('')}${holes}${knot}</svg>`,
		widthPt: width * scale,
		heightPt: height * scale,
		alternative,
	}
}
