/** The room of a logo in a letterhead, whatever its proportions. */
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { logoOnce } from './logo.ts'
import type { Node } from './look.ts'

/** All points. */
export interface LogoRoom {
	/** Of a square logo. */
	side: number
	leastHigh: number
	mostHigh: number
	/** Beside the name of the clinic. */
	mostWide: number
}
interface Size {
	width: number
	height: number
}
/** Between the logo and the name, with the gap of the columns, points. */
const gap = 6
/**
 * As much room as a square one has, a wide one no lower and a tall one no higher than what stands
 * beside it can bear. @param wide its width against its height
 */
function logoSize(wide: number, { side, leastHigh, mostHigh, mostWide }: LogoRoom): Size {
	const height = Math.min(mostHigh, Math.max(leastHigh, side / Math.sqrt(wide)))
	const width = Math.min(mostWide, height * wide)
	return { width, height: width / wide }
}
/** So much lower than it must be for reading: it takes a line of its own, over all the page. */
const tooLow = 0.8

/**
 * The logo beside the name of the clinic, or on a line above it where it is so wide that it would
 * be a strip there; nothing at all where the clinic has none.
 * @param bodyPt the width of the page without its margins
 * @throws BadLogo where the clinic's logo cannot be drawn
 */
export function logoNode(
	{ letterhead: { logo } }: LwDocument,
	room: LogoRoom,
	bodyPt: number,
): { above: Node[]; beside: Node[] } {
	if (!logo) return { above: [], beside: [] }
	const picture = logoOnce(logo)
	const drawn = 'svg' in picture ? { svg: picture.svg } : { image: picture.dataUrl }
	const { width, height } = logoSize(picture.wide, room)
	const node: Node = { is: 'decoration', ...drawn }
	if (height >= tooLow * room.leastHigh)
		return { above: [], beside: [{ ...node, fit: [width, height], width: width + gap }] }
	const banner = logoSize(picture.wide, { ...room, mostWide: bodyPt })
	return {
		above: [{ ...node, fit: [banner.width, banner.height], margin: [0, 0, 0, gap] }],
		beside: [],
	}
}
