/**
 * How well an outsole class suits a surface: 0 best to 3 poor, or 'forbidden'.
 * Common practice, no source (a seed table to be edited by the clinic). Wet 3G has a column of its own; damp 3G takes
 * the wet cost (own choice, the careful one); the other surfaces had one column for all weather. The trail row is an own choice.
 */

import type { Sole } from '../../visit/terms.ts'
import type { Basis } from '../basis.ts'

export type Ground = 'dry' | 'damp' | 'wet'
export type Cost = number | 'forbidden'

const x = 'forbidden'
export type Line = readonly [soft: Cost, firm: Cost, hard: Cost, hybrid: Cost, dry3g: Cost, wet3g: Cost, sand: Cost, hall: Cost, road: Cost]
export const lines: Record<Sole, Line> = {
	// order:               soft firm hard hybrid 3Gdry 3Gwet sand hall road
	'soft-ground': [0, 2, x, 2, x, x, x, x, x],
	'firm-ground': [1, 0, 1, 0, 2, 2, 3, x, x],
	'artificial-ground': [2, 0.5, 0.5, 0.5, 0, 0, 1, x, x],
	turf: [x, 1.5, 0.5, 1.5, 0.5, 1.5, 0, 1, 0.5],
	indoor: [x, x, x, x, x, x, 1, 0, 1],
	trail: [2, 1.5, 1, 1.5, 2, 2.5, 1.5, x, 0.5],
	road: [x, x, x, x, x, x, x, 1, 0],
}
export const suitabilityBasis: Basis = { rule: 'sole on surface', source: 'common practice, no source (seed table of outsole classes and surfaces); the trail row is an own choice', strength: 'practice' }
