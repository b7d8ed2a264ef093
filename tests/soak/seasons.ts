/** Random seasons planned one after another: each keeps what must hold of every plan. */
import { loadHighs } from '../../electron/solver/levels.ts'
import { seasonFaults, seasonsOf } from '../engine/season-invariants.ts'

export interface SeasonsResult {
	seed: number
	seasons: number
	/** a sentence for each fault, with the place of its season */
	faults: string[]
}
/** @param only the place of the one season that is looked at, from 0 */
export async function seasons(
	count: number,
	seed: number,
	{ only }: { only?: number },
	tell: (text: string) => void = () => {},
): Promise<SeasonsResult> {
	const highs = await loadHighs()
	const faults: string[] = []
	for (const [place, visit] of seasonsOf(seed, count).entries()) {
		if (only !== undefined && place !== only) continue
		const found = seasonFaults(highs, visit)
		faults.push(...found.map((fault) => `season ${place}: ${fault}`))
		if (found.length > 0 || place % 20 === 19)
			tell(`season ${place}: ${found.join('; ') || 'sound'}; ${faults.length} faults`)
	}
	return { seed, seasons: only === undefined ? count : 1, faults }
}
