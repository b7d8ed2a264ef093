/** The bar by which a sheet is proved to be printed at 1:1, with the sentence that says so. */
import { textAt } from './shape.ts'

/** What the bar must measure on paper, mm. */
export const controlBarMm = 100
/** The bar with its words, lying, mm. */
export const controlBarSize = { widthMm: controlBarMm + 1, heightMm: 13 } as const
/** From one end of a tick to the other, and from the bar to its words, mm. */
const tickMm = 4
const lines = [
	`This bar must measure ${controlBarMm} mm. If not, print again at`,
	'100 % (no fitting to the page).',
]
/** Lying, from its upper left corner. */
export const controlBar = (): string =>
	`<path d="M 0.5 0 V ${tickMm} M 0.5 ${tickMm / 2} H ${0.5 + controlBarMm} M ` +
	`${0.5 + controlBarMm} 0 V ${tickMm}" fill="none" stroke="#1d2726" stroke-width="0.4"/>` +
	lines
		.map((words, line) =>
			textAt({ x: 0.5, y: tickMm + 3.6 + 4 * line }, words, { sizeMm: 3, anchor: 'start' }),
		)
		.join('')
