/** Contrast of the clinic colour on the white paper of the reports. Source: WCAG 2.2, relative luminance and success criterion 1.4.3. */

/** Least ratio for text of normal size. Source: WCAG 2.2, success criterion 1.4.3 (level AA). */
export const leastRatio = 4.5

/** @param colour such as #1f5f5b. @returns relative luminance, 0 (black) to 1 (white) */
function luminance(colour: string): number {
	const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
		const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255
		return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
	})
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}
/** Contrast ratio of the colour against white, 1 to 21. */
export const ratioOnWhite = (colour: string): number => 1.05 / (luminance(colour) + 0.05)

/** The sentence under the colour field. The ratio is cut, not rounded up, so it never claims more than there is. */
export function contrastWords(colour: string): { enough: boolean; says: string } {
	const ratio = ratioOnWhite(colour)
	const shown = (Math.floor(ratio * 10) / 10).toFixed(1)
	return ratio < leastRatio
		? { enough: false, says: `Contrast on white is ${shown} to 1; text needs ${leastRatio} to 1 (WCAG 2.2). Please choose a darker colour.` }
		: { enough: true, says: `Contrast on white is ${shown} to 1; enough for text (WCAG 2.2 asks ${leastRatio} to 1).` }
}
