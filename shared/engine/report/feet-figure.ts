/**
 * Both feet from above, drawn to the player's measures at one scale, with length, ball line and
 * width.
 */
import type { SizingResult } from '../findings/assessment.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'
import { type Speak, speakFrom } from '../words/speak.ts'
import { shown } from '../words/words.ts'

const ptPerMm = 0.5
const boxWidth = 210
interface Foot {
	length: number
	ball: number
	width: number
}

function footPath(side: Side, { length, ball, width }: Foot, x: number, bottom: number): string {
	const mirror = side === 'left' ? -1 : 1
	// big toe lies towards the midline: to the right of a left foot seen from above
	const at = (across: number, along: number) =>
		`${shown(x - mirror * across * width * ptPerMm, 2)} ${shown(bottom - along * ptPerMm, 2)}`
	const outerBall = ball * 0.88
	return (
		`M ${at(0, 0)} C ${at(0.28, 0)} ${at(0.34, length * 0.1)} ${at(0.32, length * 0.22)} C ` +
		`${at(0.28, length * 0.42)} ${at(0.36, length * 0.56)} ${at(0.5, ball)} C ` +
		`${at(0.52, length * 0.84)} ${at(0.46, length)} ${at(0.27, length)} C ` +
		`${at(0.08, length * 1)} ${at(0.06, length * 0.96)} ${at(-0.1, length * 0.95)} C ` +
		`${at(-0.32, length * 0.93)} ${at(-0.5, length * 0.82)} ${at(-0.5, outerBall)} C ` +
		`${at(-0.5, length * 0.45)} ${at(-0.36, length * 0.3)} ${at(-0.34, length * 0.18)} C ` +
		`${at(-0.34, length * 0.06)} ${at(-0.26, 0)} ${at(0, 0)} Z`
	)
}
/**
 * @returns undefined where no foot has a length; a side without width or ball length is drawn
 * without that line
 */
export function feetFigure(
	sizing: SizingResult,
	colour: string,
	t: Speak = speakFrom(),
): { svg: string; widthPt: number; heightPt: number; alternative: string } | undefined {
	const longest = Math.max(0, ...bothSides.map((side) => sizing[side].lengthMm ?? 0))
	if (longest === 0) return undefined
	const height = longest * ptPerMm + 44
	const bottom = height - 24
	const text = (x: number, y: number, words: string, size = 9, weight = '400') =>
		`<text x="${shown(x, 2)}" y="${shown(y, 2)}" font-family="Noto" font-size="${size}" ` +
		`font-weight="${weight}" text-anchor="middle" fill="#1d2726">${words}</text>`
	const line = (x1: number, y1: number, x2: number, y2: number, dash = '') =>
		`<line x1="${shown(x1, 2)}" y1="${shown(y1, 2)}" x2="${shown(x2, 2)}" y2="${shown(y2, 2)}" ` +
		`stroke="#1d2726" stroke-width="0.8"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`
	const parts: string[] = []
	const words: string[] = []
	for (const side of bothSides) {
		const { lengthMm, ballLengthMm, widthMm } = sizing[side]
		const x = side === 'left' ? boxWidth / 2 : boxWidth * 1.5
		parts.push(text(x, height - 6, side === 'left' ? t('feet.left') : t('feet.right'), 10, '700'))
		if (lengthMm === undefined) {
			parts.push(text(x, bottom - 60, t('feet.notMeasured')))
			words.push(t('feet.oneMissing', { side }))
			continue
		}
		const foot = {
			length: lengthMm,
			ball: ballLengthMm ?? lengthMm * 0.73,
			width: widthMm ?? lengthMm * 0.38,
		}
		const top = bottom - lengthMm * ptPerMm
		const out = side === 'left' ? x - 56 : x + 56
		parts.push(
			`<path d="${footPath(side, foot, x, bottom)}" fill="${colour}" fill-opacity="0.16" ` +
				`stroke="${colour}" stroke-width="1.4"/>`,
		)
		parts.push(
			line(out, top, out, bottom),
			line(out - 4, top, out + 4, top),
			line(out - 4, bottom, out + 4, bottom),
			text(out + (side === 'left' ? -26 : 26), (top + bottom) / 2, `${shown(lengthMm)} mm`),
		)
		if (ballLengthMm !== undefined)
			parts.push(
				line(
					x - foot.width * 0.34,
					bottom - ballLengthMm * ptPerMm,
					x + foot.width * 0.34,
					bottom - ballLengthMm * 0.94 * ptPerMm,
					'3 2',
				),
			)
		if (widthMm !== undefined)
			parts.push(text(x, bottom - foot.ball * ptPerMm * 0.8, `${shown(widthMm)} mm`, 9))
		words.push(
			widthMm === undefined
				? t('feet.one', { side, length: shown(lengthMm) })
				: t('feet.oneWide', { side, length: shown(lengthMm), width: shown(widthMm) }),
		)
	}
	return {
		svg:
			`<svg xmlns="http://www.w3.org/2000/svg" width="${boxWidth * 2}" ` +
			`height="${shown(height, 2)}" viewBox="0 0 ${boxWidth * 2} ` +
			`${shown(height, 2)}">${parts.join('')}</svg>`,
		widthPt: boxWidth * 2,
		heightPt: height,
		alternative: t('feet.alternative', { feet: words.join('; ') }),
	}
}
