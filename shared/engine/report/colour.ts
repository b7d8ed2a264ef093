/**
 * Contrast of the clinic colour on white paper. Source: WCAG 2.2, relative luminance and success
 * criterion 1.4.3.
 */

/**
 * Least ratio for text of normal size. Source: WCAG 2.2, success criterion 1.4.3 (level AA).
 * @internal
 */
export const leastRatio = 4.5
/** How much of the colour is kept at each step of darkening; a choice of this program. */
const step = 0.94
const partsOf = (colour: string): number[] =>
	[1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16))
const hex = (parts: readonly number[]): string =>
	`#${parts.map((part) => Math.round(part).toString(16).padStart(2, '0')).join('')}`

/** @param colour such as #1f5f5b. @returns relative luminance, 0 (black) to 1 (white) */
function luminance(colour: string): number {
	const [red = 0, green = 0, blue = 0] = partsOf(colour).map((part) =>
		part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4,
	)
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
/** Contrast ratio of the colour against white, 1 to 21. @internal */
export const ratioOnWhite = (colour: string): number => 1.05 / (luminance(colour) + 0.05)
/** The colour, darkened in its own hue until text in it can be read on white. */
export function textOn(colour: string): string {
	let now = colour.toLowerCase()
	while (ratioOnWhite(now) < leastRatio) now = hex(partsOf(now).map((part) => part * step))
	return now
}
/**
 * The sentence for the settings. The ratio is cut, not rounded up, so it never claims more than
 * there is.
 */
export function contrastWords(colour: string): { enough: boolean; says: string } {
	const ratio = (Math.floor(ratioOnWhite(colour) * 10) / 10).toFixed(1)
	return ratioOnWhite(colour) < leastRatio
		? {
				enough: false,
				says:
					`Contrast on white is ${ratio} to 1; text needs ${leastRatio} to 1 (WCAG 2.2). ` +
					`The documents print text in the darker ${textOn(colour)} instead.`,
			}
		: {
				enough: true,
				says:
					`Contrast on white is ${ratio} to 1; enough for text (WCAG 2.2 asks ${leastRatio} ` +
					'to 1).',
			}
}
