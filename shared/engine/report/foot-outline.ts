/** The outline of a foot seen from above, built from its measures alone: on paper and on screen. */
import type { Side } from '../visit/visit.ts'
import { shown } from '../words/words.ts'

/** All mm. A foot without these measures keeps the proportions of the picture. */
export interface FootMeasures {
	lengthMm: number
	ballLengthMm?: number | undefined
	widthMm?: number | undefined
	heelWidthMm?: number | undefined
}
/** Shares of the length or of the width, of our own drawing: no figures of any population. */
const usual = { ball: 0.73, width: 0.38, heel: 0.68 } as const

/** Where the foot stands: the middle of its heel's edge, and its scale in units of the drawing. */
export interface FootPlace {
	x: number
	bottom: number
	unitsPerMm: number
}
/** The measures that the outline follows, those that were not taken filled up; mm. */
export function outlined({ lengthMm, ballLengthMm, widthMm, heelWidthMm }: FootMeasures) {
	const width = widthMm ?? lengthMm * usual.width
	return {
		length: lengthMm,
		ball: ballLengthMm ?? lengthMm * usual.ball,
		width,
		heel: heelWidthMm ?? width * usual.heel,
	}
}
/** A point of a foot in its drawing: `across` from the middle towards the big toe, mm. */
export const pointOn = (
	side: Side,
	{ x, bottom, unitsPerMm }: FootPlace,
	acrossMm: number,
	alongMm: number,
): readonly [number, number] => [
	// the big toe lies towards the midline: to the right of a left foot seen from above
	x + (side === 'left' ? 1 : -1) * acrossMm * unitsPerMm,
	bottom - alongMm * unitsPerMm,
]
/** The outline as path data: heel below, toes above. */
export function footPath(side: Side, measures: FootMeasures, place: FootPlace): string {
	const { length, ball, width, heel } = outlined(measures)
	const half = heel / 2 / width
	const at = (across: number, along: number) =>
		pointOn(side, place, across * width, along)
			.map((value) => shown(value, 2))
			.join(' ')
	const outerBall = ball * 0.88
	return (
		`M ${at(0, 0)} C ${at(0.28, 0)} ${at(half, length * 0.1)} ${at(half - 0.02, length * 0.22)} C ` +
		`${at(0.28, length * 0.42)} ${at(0.36, length * 0.56)} ${at(0.5, ball)} C ` +
		`${at(0.52, length * 0.84)} ${at(0.46, length)} ${at(0.27, length)} C ` +
		`${at(0.08, length * 1)} ${at(0.06, length * 0.96)} ${at(-0.1, length * 0.95)} C ` +
		`${at(-0.32, length * 0.93)} ${at(-0.5, length * 0.82)} ${at(-0.5, outerBall)} C ` +
		`${at(-0.5, length * 0.45)} ${at(-half - 0.02, length * 0.3)} ${at(-half, length * 0.18)} C ` +
		`${at(-half, length * 0.06)} ${at(-0.26, 0)} ${at(0, 0)} Z`
	)
}
