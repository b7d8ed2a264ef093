/** Which size and fitting of a model to try. */
import { need } from '../../plain/need.ts'
import type { Model, ShelfSize } from '../../visit/shelf.ts'
import { type Needs, toeRoomBand } from './needs.ts'

/** The fittings of one label; its length is that of the shortest of them. */
interface Label {
	system: string
	label: number
	insideLengthMm: number
	fittings: ShelfSize[]
}
function labelsOf(model: Model): Label[] {
	const labels: Label[] = []
	for (const size of model.sizes) {
		const known = labels.findLast(
			(label) => label.label === size.label && label.system === size.system,
		)
		if (known) {
			known.fittings.push(size)
			known.insideLengthMm = Math.min(known.insideLengthMm, size.insideLengthMm)
		} else
			labels.push({
				system: size.system,
				label: size.label,
				insideLengthMm: size.insideLengthMm,
				fittings: [size],
			})
	}
	return labels
}
/** Text order that does not depend on the language of the PC. */
export function byText(first: string, second: string): number {
	if (first === second) return 0
	return first < second ? -1 : 1
}
const sizeName = (size: ShelfSize) => `${size.system} ${size.label} ${size.fitting ?? ''}`

/** The label with enough toe room that comes nearest the target; where none has it, the longest. */
function bestLabel(model: Model, needs: Needs): Label {
	const room = toeRoomBand(model, needs)
	const labels = labelsOf(model)
	const roomIn = (label: Label) => label.insideLengthMm - needs.lengthMm
	const offTarget = (label: Label) => Math.abs(roomIn(label) - room.target)
	const enough = labels.filter((label) => roomIn(label) >= room.min)
	const longer = (label: Label, best: Label) => label.insideLengthMm > best.insideLengthMm
	if (enough.length === 0)
		return labels.reduce((best, label) => (longer(label, best) ? label : best))
	return enough.reduce((best, label) => {
		const further = offTarget(label) - offTarget(best)
		return further < 0 || (further === 0 && longer(label, best)) ? label : best
	})
}
/**
 * The best size: of the labels with enough toe room the one nearest the target (else the longest),
 * then of its fittings the narrowest that is not tight on the wider foot (else the widest). A
 * longer or wider foot never gets a shorter label or a narrower fitting.
 * @param tightMm width over the wider foot below which a fitting is tight
 */
export function bestSize(model: Model, needs: Needs, tightMm: number): ShelfSize {
	const fittings = [...bestLabel(model, needs).fittings].sort(
		(first, second) =>
			first.ballWidthMm - second.ballWidthMm || byText(sizeName(first), sizeName(second)),
	)
	const { widthMm } = needs
	const chosen =
		widthMm === undefined
			? fittings[Math.floor((fittings.length - 1) / 2)]
			: (fittings.find((fitting) => fitting.ballWidthMm - widthMm >= tightMm) ?? fittings.at(-1))
	return need(chosen, 'a fitting of the label')
}
