/** The seed table of soles and surfaces, spread over the three states of the ground. */
import type { Sole, Surface } from '../../visit/terms.ts'
import { type Cost, type Ground, type Line, lines, order } from './suitability.table.ts'

export type Suitability = Record<Sole, Record<Surface, Record<Ground, Cost>>>

const cell = (line: Line, column: (typeof order)[number]): Cost => line[order.indexOf(column)]!
function spread(line: Line): Record<Surface, Record<Ground, Cost>> {
	const all = (column: (typeof order)[number]) => {
		const cost = cell(line, column)
		return { dry: cost, damp: cost, wet: cost }
	}
	const wet3g = cell(line, 'artificial-3g wet')
	return {
		'natural-soft': all('natural-soft'),
		'natural-firm': all('natural-firm'),
		'natural-hard': all('natural-hard'),
		hybrid: all('hybrid'),
		'artificial-3g': { dry: cell(line, 'artificial-3g dry'), damp: wet3g, wet: wet3g },
		'artificial-sand': all('artificial-sand'),
		hall: all('hall'),
		road: all('road'),
	}
}

export const suitability: Suitability = {
	'soft-ground': spread(lines['soft-ground']),
	'firm-ground': spread(lines['firm-ground']),
	'artificial-ground': spread(lines['artificial-ground']),
	turf: spread(lines.turf),
	indoor: spread(lines.indoor),
	trail: spread(lines.trail),
	road: spread(lines.road),
}
