/**
 * A page as a coarse picture in letters, to be kept and read: the darker a cell, the heavier its
 * sign. Worked out from the operators alone, it is the same on every machine.
 */
import { createHash } from 'node:crypto'
import type { Mark, MarkedPage } from './page-marks.ts'
import type { Box, Spot } from './page-paths.ts'

/** A cell of the picture, points. */
const cell = { width: 6, height: 9 } as const
/** Signs of a cell from empty to black, and the share of ink from which each stands. */
const signs = [' ', '.', ':', '+', '#'] as const
const steps = [0.025, 0.12, 0.3, 0.6] as const
/** Letters cover about so much of their box; a line shows, however fine. */
const letterInk = 0.5
const leastLine = 0.06
/** Samples of a cell each way. */
const samples = 3

interface Grid {
	columns: number
	rows: number
	ink: Float64Array
	patterns: Map<number, string>
}
/** Where the lines of an area cross a height, from left to right. */
function crossings(outlines: readonly (readonly Spot[])[], y: number): number[] {
	const found: number[] = []
	for (const outline of outlines)
		for (const [index, [x, toY]] of outline.entries()) {
			const [fromX, fromY] = outline[index === 0 ? outline.length - 1 : index - 1] ?? [x, toY]
			if (fromY > y === toY > y) continue
			found.push(fromX + ((y - fromY) / (toY - fromY)) * (x - fromX))
		}
	return found.sort((a, b) => a - b)
}
function fill(grid: Grid, { outlines, box, clip, ...mark }: Mark): void {
	const share = (mark.kind === 'text' ? letterInk * mark.ink : mark.ink) / samples ** 2
	const pattern = mark.kind === 'area' ? mark.pattern : undefined
	const high = cell.height / samples
	const wide = cell.width / samples
	const from = Math.max(0, Math.ceil(Math.max(box.top, clip.top) / high - 0.5))
	const to = Math.min(grid.rows * samples - 1, Math.min(box.bottom, clip.bottom) / high - 0.5)
	for (let line = from; line <= to; line++) {
		const along = crossings(outlines, (line + 0.5) * high)
		for (let pair = 0; pair + 1 < along.length; pair += 2) {
			const left = Math.max(along[pair] ?? 0, clip.left, 0)
			const right = Math.min(along[pair + 1] ?? 0, clip.right, grid.columns * cell.width)
			for (let at = Math.ceil(left / wide - 0.5); (at + 0.5) * wide <= right; at++) {
				const index = Math.floor(line / samples) * grid.columns + Math.floor(at / samples)
				grid.ink[index] = (grid.ink[index] ?? 0) + share
				if (pattern !== undefined) grid.patterns.set(index, pattern)
			}
		}
	}
}
const isIn = ([x, y]: Spot, { left, right, top, bottom }: Box): boolean =>
	x >= left && x <= right && y >= top && y <= bottom
function stroke(grid: Grid, { outlines, clip, ink }: Mark): void {
	const touched = new Set<number>()
	for (const outline of outlines)
		for (const [index, [x, y]] of outline.entries()) {
			const [fromX, fromY] = outline[index - 1] ?? [x, y]
			const pieces = Math.max(1, Math.ceil(Math.hypot(x - fromX, y - fromY) / 2))
			for (let piece = 0; piece <= pieces; piece++) {
				const spot = [
					fromX + ((x - fromX) * piece) / pieces,
					fromY + ((y - fromY) * piece) / pieces,
				] as const
				const column = Math.floor(spot[0] / cell.width)
				const row = Math.floor(spot[1] / cell.height)
				if (isIn(spot, clip) && column >= 0 && column < grid.columns && row >= 0 && row < grid.rows)
					touched.add(row * grid.columns + column)
			}
		}
	for (const index of touched)
		grid.ink[index] = (grid.ink[index] ?? 0) + Math.max(leastLine, 0.3 * ink)
}
/** One letter for each tile that an area can be filled with. */
const letterOf = (pattern: string): string =>
	String.fromCharCode(97 + ((createHash('sha256').update(pattern).digest()[0] ?? 0) % 26))
/** The rows of the picture, without the blanks at their ends. */
export function rasterOf({ width, height, marks }: MarkedPage): string {
	const columns = Math.ceil(width / cell.width)
	const rows = Math.ceil(height / cell.height)
	const grid: Grid = { columns, rows, ink: new Float64Array(columns * rows), patterns: new Map() }
	for (const mark of marks) {
		if (mark.kind === 'line') stroke(grid, mark)
		else fill(grid, mark)
	}
	return Array.from({ length: rows }, (_, row) =>
		Array.from({ length: columns }, (_, column) => {
			const index = row * columns + column
			const pattern = grid.patterns.get(index)
			if (pattern !== undefined) return letterOf(pattern)
			const ink = grid.ink[index] ?? 0
			return signs[steps.filter((step) => ink >= step).length]
		})
			.join('')
			.trimEnd(),
	)
		.join('\n')
		.trimEnd()
}
/** At most so many cells of a picture may be one sign lighter or darker: a share on a step. */
const mostDiffering = 0.002
const levelOf = (sign: string): number => signs.indexOf(sign as (typeof signs)[number])
/**
 * Whether two pictures show the same page: no cell is more than one sign lighter or darker, and
 * hardly any is at all.
 */
export function looksAlike(one: string, other: string): boolean {
	const [before, now] = [one.split('\n'), other.split('\n')]
	if (before.length !== now.length) return false
	let cells = 0
	let differing = 0
	for (const [row, line] of before.entries()) {
		const against = now[row] ?? ''
		const width = Math.max(line.length, against.length)
		cells += width
		for (let column = 0; column < width; column++) {
			const [was, is] = [line[column] ?? ' ', against[column] ?? ' ']
			if (was === is) continue
			const [from, to] = [levelOf(was), levelOf(is)]
			if (from < 0 || to < 0 || Math.abs(from - to) > 1) return false
			differing++
		}
	}
	return differing <= mostDiffering * cells
}
