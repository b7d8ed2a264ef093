/** The width to ask for, in letters where the feet have any, and in mm. */
import type { SizingResult } from '../../findings/assessment.ts'
import { bothSides, rounded } from '../../visit/sides.ts'
import { state } from '../../words/statement.ts'

/** For the wider foot; undefined where no width is measured. */
export function widthWords({ fitting, ...sizing }: SizingResult): string | undefined {
	const widthsMm = bothSides.flatMap((side) => sizing[side].widthMm ?? [])
	if (widthsMm.length === 0) return undefined
	const widthMm = rounded(Math.max(...widthsMm), 1)
	return state('roles.width', { ...fitting, widthMm }).says
}
