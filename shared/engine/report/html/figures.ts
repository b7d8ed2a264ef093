/**
 * Figures: drawn, named, and told in words for who does not see them. What is drawn keeps a size at which its words can be read,
 * so it may be wider than a telephone: then it moves to and fro in a place of its own, by hand and by
 * the arrow keys, and the page does not.
 */
import type { BlockOf } from '../document.ts'
import { element, worded } from './elements.ts'

/** CSS pixels of a point and of a millimetre (CSS Values 4, 6.2). */
const pxOfPt = 96 / 72
const pxOfMm = 96 / 25.4
/** A figure no wider than this is drawn whole on a telephone of 360 px. */
const phonePx = 320

/** An own figure with its name and description inside, for those who do not see it. */
function describedSvg(svg: string, id: string, title: string, description: string): string {
	return svg.replace(/<svg\b/, `<svg role="img" aria-labelledby="${id}-title ${id}-desc"`).replace(
		/<svg\b[^>]*>/,
		// a function: in a text to put in, '$&' of a caption would stand for the whole element
		(start) =>
			start +
			worded('title', title, ` id="${id}-title"`) +
			worded('desc', description, ` id="${id}-desc"`),
	)
}
interface Drawn {
	svg: string
	caption: string
	alternative: string
}
function figure(
	{ svg, caption, alternative }: Drawn,
	id: string,
	widthPx: number,
	attributes = '',
): string {
	const drawn = describedSvg(svg, id, caption, alternative)
	// who cannot drag it moves it by the arrow keys
	const held =
		widthPx > phonePx
			? element(
					'div',
					drawn,
					` class="drawn" role="group" aria-labelledby="${id}-caption" tabindex="0"`,
				)
			: drawn
	return element('figure', held + worded('figcaption', caption, ` id="${id}-caption"`), attributes)
}
export const figureHtml = (block: BlockOf<'figure'>, id: string): string =>
	figure(block, id, block.widthPt * pxOfPt)
/** A millimetre of a screen is none: only what is printed is at true size. */
export const trueSizeHtml = (block: BlockOf<'true-size'>, id: string): string =>
	figure(block, id, block.widthMm * pxOfMm, ' class="true-size"')
