/**
 * Both feet from above, drawn to the player's measures at one scale, with length, ball line and
 * width, narrow enough to stand beside sentences.
 */
import type { FootSizing, Kept, SizingResult } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type Speak, speakFrom } from '../words/speak.ts'
import { shown } from '../words/words.ts'
import { footPath, outlined } from './foot-outline.ts'

const ptPerMm = 0.45
/** Room of one foot, points. */
const boxWidth = 106
/** Room over the toes and under the heel, points. */
const over = 8
const under = 32
interface Figure {
	svg: string
	widthPt: number
	heightPt: number
	alternative: string
}
/** Where a foot stands: its middle, the edge of its heel, and the foot of the figure (points). */
interface Place {
	side: Side
	x: number
	bottom: number
	height: number
}
/**
 * @param colour fills the feet and draws their edge
 * @returns undefined where no foot has a length; a side without width or ball length is drawn
 * without that line
 */
export function feetFigure(
	sizing: Kept<SizingResult>,
	colour: string,
	t: Speak = speakFrom(),
): Figure | undefined {
	const longest = Math.max(0, ...bothSides.map((side) => sizing[side].lengthMm ?? 0))
	if (longest === 0) return undefined
	const height = longest * ptPerMm + over + under
	const width = boxWidth * 2
	const feet = bothSides.map((side) => {
		const x = side === 'left' ? boxWidth / 2 : boxWidth * 1.5
		return footDrawing(sizing[side], { side, x, bottom: height - under, height }, colour, t)
	})
	return {
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${shown(height, 2)}" ` +
			`viewBox="0 0 ${width} ${shown(height, 2)}">${feet.map(({ drawn }) => drawn).join('')}</svg>`,
		widthPt: width,
		heightPt: height,
		alternative: t('feet.alternative', { feet: feet.map(({ words }) => words).join('; ') }),
	}
}
/** A foot with its name below, and what the drawing says in words. */
function footDrawing(
	measures: FootSizing,
	place: Place,
	colour: string,
	t: Speak,
): { drawn: string; words: string } {
	const { side, x, bottom, height } = place
	const { lengthMm, widthMm } = measures
	const name = text(x, height - 17, side === 'left' ? t('feet.left') : t('feet.right'), {
		size: 10,
		weight: '700',
	})
	if (lengthMm === undefined)
		return {
			drawn: name + text(x, bottom - 60, t('feet.notMeasured')),
			words: t('feet.oneMissing', { side }),
		}
	const length = shown(lengthMm)
	return {
		drawn: name + outline({ ...measures, lengthMm }, place, colour),
		words:
			widthMm === undefined
				? t('feet.one', { side, length })
				: t('feet.oneWide', { side, length, width: shown(widthMm) }),
	}
}
function outline(
	measures: FootSizing & { lengthMm: number },
	{ side, x, bottom, height }: Place,
	colour: string,
): string {
	const { lengthMm, ballLengthMm, widthMm } = measures
	const foot = outlined(measures)
	const path = footPath(side, measures, { x, bottom, unitsPerMm: ptPerMm })
	return [
		`<path d="${path}" fill="${colour}" fill-opacity="0.16" ` +
			`stroke="${colour}" stroke-width="1.4"/>`,
		lengthScale(lengthMm, foot.width, { side, x, bottom, height }),
		ballLengthMm === undefined ? '' : ballLine(foot.width, ballLengthMm, x, bottom),
		widthMm === undefined
			? ''
			: text(x, bottom - foot.ball * ptPerMm * 0.94 + underBall, `${shown(widthMm)} mm`),
	].join('')
}
/** From the line of the ball to the width under it, points. */
const underBall = 13
/** From the foot to the line of its length, points. */
const beside = 12
/** The length beside the foot, on its outer side; its number under the name. */
function lengthScale(lengthMm: number, widthMm: number, place: Place): string {
	const { side, x, bottom, height } = place
	const outwards = side === 'left' ? -1 : 1
	const out = x + outwards * ((widthMm / 2) * ptPerMm + beside)
	const top = bottom - lengthMm * ptPerMm
	return [
		line([out, top], [out, bottom]),
		line([out - 4, top], [out + 4, top]),
		line([out - 4, bottom], [out + 4, bottom]),
		text(x, height - 5, `${shown(lengthMm)} mm`),
	].join('')
}
/** Where the toes bend, dashed. */
const ballLine = (width: number, ballLengthMm: number, x: number, bottom: number): string =>
	line(
		[x - width * 0.34, bottom - ballLengthMm * ptPerMm],
		[x + width * 0.34, bottom - ballLengthMm * 0.94 * ptPerMm],
		'3 2',
	)
const text = (
	x: number,
	y: number,
	words: string,
	{ size = 9, weight = '400' }: { size?: number; weight?: string } = {},
): string =>
	`<text x="${shown(x, 2)}" y="${shown(y, 2)}" font-family="Noto" font-size="${size}" ` +
	`font-weight="${weight}" text-anchor="middle" fill="#1d2726">${words}</text>`
const line = (
	[x1, y1]: readonly [number, number],
	[x2, y2]: readonly [number, number],
	dash = '',
): string =>
	`<line x1="${shown(x1, 2)}" y1="${shown(y1, 2)}" x2="${shown(x2, 2)}" y2="${shown(y2, 2)}" ` +
	`stroke="#1d2726" stroke-width="0.8"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`
