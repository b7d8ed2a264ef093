/** A few of the random seasons of the long run (`npm run soak -- season`). */
import { expect, it } from 'vitest'
import { loadHighs } from '../../electron/solver/levels.ts'
import { seasonFaults, seasonsOf } from './season-invariants.ts'

const highs = await loadHighs()
it.each(seasonsOf(20270104, 20).map((visit, place) => [place, visit] as const))(
	'season %i',
	(_, visit) => expect(seasonFaults(highs, visit)).toEqual([]),
	60_000,
)
