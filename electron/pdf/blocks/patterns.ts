/** The patterns that tell pairs apart without colour, as tiles that a page is filled with. */
import { present } from '../../../shared/engine/plain/present.ts'
import type { Pattern } from '../../../shared/engine/report/document.ts'
import { ink, type Node } from '../look.ts'

/** The field beside a letter: its pattern in a frame. @param height points */
export function patternField(pattern: Pattern | undefined, height: number): Node[] {
	if (!pattern) return []
	const field = { type: 'rect', x: 0, y: 0.42 * height, w: 1.25 * height, h: height }
	return [
		{
			width: 1.25 * height + 2,
			canvas: [
				...(pattern === 'plain' ? [] : [{ ...field, color: [pattern, ink] }]),
				{ ...field, lineWidth: 0.6, lineColor: ink },
			],
		},
	]
}
const tile = (pattern: string, side = 8) =>
	present({ boundingBox: [0, 0, side, side], xStep: side, yStep: side, pattern })
/**
 * Tiles of the patterns, in points, new each time: pdfmake writes into what it is given. The page
 * has its second axis downwards: a line to a larger y falls to the right.
 */
export const patternTiles = (): Record<Exclude<Pattern, 'plain'>, object> => ({
	rising: tile('1.6 w -1 9 m 9 -1 l s -1 1 m 1 -1 l s 7 9 m 9 7 l s'),
	falling: tile('1.6 w -1 -1 m 9 9 l s -1 7 m 1 9 l s 7 -1 m 9 1 l s'),
	dots: tile('1 1 2.4 2.4 re f', 5),
	bars: tile('1.5 0 1.6 5 re f', 5),
	grid: tile('0 2 5 1 re f 2 0 1 5 re f', 5),
	lines: tile('0 1 5 1.6 re f', 5),
	crosses: tile('0.9 w -1 -1 m 7 7 l s -1 7 m 7 -1 l s', 6),
	checks: tile('0 0 4 4 re f 4 4 4 4 re f'),
	dark: tile('0 0 8 8 re f'),
	dashes: tile('0 1 4 1.6 re f 3 4 3 1.6 re f', 6),
	half: tile('0 0 3 8 re f', 8),
})
