/**
 * Width of a player under 18: no norm was found, so the foot is held against the widths that the
 * clinic's shelf has at this length, and no letter is given.
 */
import { isAdult } from '../facts/age.ts'
import { isTrainer } from '../facts/trainer.ts'
import type { FootSizing, PerSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Shelf, ShelfSize } from '../visit/shelf.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import type { InsideLength } from './inside-length.ts'

type Lengths = InsideLength & { trainers: InsideLength }
/** Sizes of the shelf that are of the right length. */
const sizesInReach = (shelf: Shelf | undefined, lengths: Lengths): ShelfSize[] =>
	(shelf?.models ?? [])
		.filter(({ retired }) => retired !== true)
		.flatMap((model) => {
			const { min, max } = (isTrainer(model) ? lengths.trainers : lengths).insideLengthMm
			return model.sizes.filter(
				({ insideLengthMm }) => insideLengthMm >= min && insideLengthMm <= max,
			)
		})
/** A note on the wider foot; none for adults, who have norms, and where no width was measured. */
export function youngWidthFindings(
	visit: Visit,
	feet: PerSide<FootSizing>,
	lengths: Lengths,
	shelf: Shelf | undefined,
	protocol: Protocol,
): Finding[] {
	if (isAdult(visit, protocol)) return []
	const widths = bothSides.flatMap((side) => {
		const { widthMm } = feet[side]
		return widthMm === undefined ? [] : [{ side, widthMm }]
	})
	if (widths.length === 0) return []
	const widestMm = Math.max(...widths.map(({ widthMm }) => widthMm))
	const inside = sizesInReach(shelf, lengths).map(({ ballWidthMm }) => ballWidthMm)
	const leastMm = widestMm + protocol.value('footwear.widthTightMm')
	const onShelf =
		inside.length === 0
			? undefined
			: {
					sizes: inside.length,
					wideEnough: inside.filter((mm) => mm >= leastMm).length,
					fromMm: Math.min(...inside),
					toMm: Math.max(...inside),
				}
	return [
		findingOf(state('sizing.young-width', present({ widthMm: widestMm, onShelf })), {
			side: 'both',
			level: 'note',
			because: widths.map(({ side, widthMm }) => reading('ballWidthMm', widthMm, 'mm', side)),
			basis: protocol.basis(
				'width without norms: the shoe against the foot',
				'footwear.widthTightMm',
			),
		}),
	]
}
