/** The names of curves and marks in the right margin, moved apart where they would touch. */
import type { Panel } from '../chart.ts'
import { type Box, line, lineHeight, quiet, text, widthOf } from './shapes.ts'

interface Named {
	words: readonly string[]
	/** Where the curve or line ends (points). */
	y: number
	height: number
}
/** Room that the names take beside the last panel (points). */
export function marginWidth(panels: readonly Panel[]): number {
	const widths = panels.flatMap(({ curves, marks }) => [
		...curves.map((curve) => widthOf(curve.name)),
		...marks.flatMap((mark) => mark.words.map((words) => widthOf(words))),
	])
	return widths.length === 0 ? 8 : Math.max(...widths) + 12
}
/** @param atY from a value of the axis to a place on the page (points) */
export function marginNames(panel: Panel, box: Box, atY: (value: number) => number): string {
	const names = namesOf(panel, atY)
	const start = box.x + box.width
	return spread(names, box.y - 4, box.y + box.height + 12)
		.map(
			({ words, y, centre }) =>
				line([start, y], [start + 8, centre], { colour: quiet, width: 0.6 }) +
				words
					.map((word, row) =>
						text(
							[start + 10, centre - (words.length * lineHeight) / 2 + (row + 1) * lineHeight - 2.6],
							word,
						),
					)
					.join(''),
		)
		.join('')
}
const namesOf = ({ curves, marks }: Panel, atY: (value: number) => number): Named[] =>
	[
		...curves.flatMap(({ name, points }) => {
			const last = points.at(-1)
			return last ? [{ words: [name], y: last.y }] : []
		}),
		...marks,
	]
		.map(({ words, y }) => ({
			words,
			y: atY(y),
			height: words.length * lineHeight + (words.length > 1 ? 4 : 0),
		}))
		.toSorted((a, b) => a.y - b.y)
/** Moves names apart, in order, within top and bottom as far as there is room. */
function spread(
	names: readonly Named[],
	top: number,
	bottom: number,
): (Named & { centre: number })[] {
	const pushedDown: (Named & { centre: number })[] = []
	for (const name of names) {
		const above = pushedDown.at(-1)
		const highest = above ? above.centre + (above.height + name.height) / 2 : top + name.height / 2
		pushedDown.push({ ...name, centre: Math.max(name.y, highest) })
	}
	const pushedUp: (Named & { centre: number })[] = []
	for (const name of pushedDown.toReversed()) {
		const below = pushedUp.at(-1)
		const lowest = below
			? below.centre - (name.height + below.height) / 2
			: bottom - name.height / 2
		pushedUp.push({ ...name, centre: Math.min(name.centre, lowest) })
	}
	return pushedUp.toReversed()
}
