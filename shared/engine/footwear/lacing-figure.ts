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
	Array.from({ length: last - first }, (_, index) => first + index).flatMap((row) => [
		run([row, 'inner'], [row + 1, 'outer'], kind),
		run([row, 'outer'], [row + 1, 'inner'], kind),
	])
const straight = (first: number, last: number, kind: Run['kind'] = 'over') =>
	Array.from({ length: last - first }, (_, index) => first + index).flatMap((row) => [
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
/** Where the eyelets lie on the drawing, in its units. */
const width = 110
const height = 170
const middle = 55
const bigToeRight = 82
const bigToeLeft = 28
const rowAt = (row: number) => 150 - row * 25
/** A left shoe seen from above has its big-toe side on the right. */
function columnAt(column: End[1], side: Side): number {
	if (column === 'middle') return middle
	return (column === 'inner') === (side === 'left') ? bigToeRight : bigToeLeft
}
function lineOf({ from, to, kind }: Run, side: Side, colour: string): string {
	const [fromX, fromY] = [columnAt(from[1], side), rowAt(from[0])]
	const [toX, toY] = [columnAt(to[1], side), rowAt(to[0])]
	if (kind !== 'loop')
		return (
			`<line x1="${fromX}" y1="${fromY}" x2="${toX}" y2="${toY}" stroke="${colour}" ` +
			`${stroke[kind]}/>`
		)
	const bulge = fromX > middle ? 14 : -14
	return (
		`<path d="M ${fromX} ${fromY} C ${fromX + bulge} ${fromY} ${fromX + bulge} ${toY} ` +
		`${toX} ${toY}" stroke="${colour}" ${stroke.loop}/>`
	)
}
const hole = (row: number, column: End[1], side: Side) =>
	`<circle cx="${columnAt(column, side)}" cy="${rowAt(row)}" r="3.6" fill="#ffffff" ` +
	'stroke="#1d2726" stroke-width="1.2"/>'

/**
 * The lace's run on one shoe, drawn in 110 by 170 units.
 * @param side the foot to draw for: only the toe lift differs between left and right
 * @param scale points a unit on paper
 */
export function lacingFigure(id: LacingId, side: Side, colour = '#0f6b5c', scale = 1): Figure {
	const { runs, knot, alternative: pattern } = patterns[id]
	const hiddenFirst = [...runs].sort(
		(first, second) => Number(second.kind === 'hidden') - Number(first.kind === 'hidden'),
	)
	const lines = hiddenFirst.map((laceRun) => lineOf(laceRun, side, colour))
	const holes = Array.from(
		{ length: rows },
		(_, row) => hole(row, 'inner', side) + hole(row, 'outer', side),
	)
	const tied =
		knot === undefined ? '' : `<circle cx="${middle}" cy="${rowAt(knot)}" r="6" fill="${colour}"/>`
	const alternative =
		`${side === 'left' ? 'Left' : 'Right'} shoe seen from above, toe below. ` + `${pattern}`
	return {
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${alternative}" ` +
			`width="${width * scale}" height="${height * scale}" viewBox="0 0 ${width} ` +
			`${height}">${lines.join('')}${holes.join('')}${tied}</svg>`,
		widthPt: width * scale,
		heightPt: height * scale,
		alternative,
	}
}
