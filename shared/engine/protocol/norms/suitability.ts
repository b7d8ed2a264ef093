/** The seed table of soles and surfaces, spread over the three states of the ground. */
import type { Sole, Surface } from '../../visit/terms.ts'
import { type Cost, type Ground, type Line, lines } from './suitability.table.ts'

export type Suitability = Record<Sole, Record<Surface, Record<Ground, Cost>>>

function spread(line: Line): Record<Surface, Record<Ground, Cost>> {
	const [soft, firm, hard, hybrid, dry3g, wet3g, sand, hall, road] = line
	const all = (cost: Cost) => ({ dry: cost, damp: cost, wet: cost })
	return {
		'natural-soft': all(soft),
		'natural-firm': all(firm),
		'natural-hard': all(hard),
		hybrid: all(hybrid),
		'artificial-3g': { dry: dry3g, damp: wet3g, wet: wet3g },
		'artificial-sand': all(sand),
		hall: all(hall),
		road: all(road),
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
