/** Drawings: a figure in the text, and a sheet on which a millimetre is a millimetre. */
import type { BlockOf, LwDocument } from '../../../shared/engine/report/document.ts'
import { ink, type Look, type Node, quiet, words } from '../look.ts'
import { ptPerMm, trueSizePage } from '../page.ts'

/** At its own size, or as wide as the page lets it be; never torn from its caption. */
export const figure = (
	{ caption, alternative, svg, widthPt, heightPt }: BlockOf<'figure'>,
	{ page, scale }: Look,
): Node => ({
	is: 'captioned',
	unbreakable: true,
	stack: [
		{
			svg,
			alternative,
			width: Math.min(widthPt, page.bodyPt),
			height: heightPt,
			alignment: 'center',
		},
		words(caption, {
			is: 'caption',
			fontSize: scale.caption,
			color: quiet,
			alignment: 'center',
			margin: [0, 2, 0, 6],
		}),
	],
})
/** Size of the words over a sheet, and what is free over them, points: three lines find room. */
const sheetWords = 8.4
const overSheetWords = 13
/** A page of its own, its caption at the head, without letterhead or foot. */
export function trueSizeSheet(
	{ svg, widthMm, heightMm, caption, alternative }: BlockOf<'true-size'>,
	document: LwDocument,
): Node {
	const sheet = trueSizePage(document, widthMm, heightMm)
	const width = widthMm * ptPerMm
	const height = heightMm * ptPerMm
	return {
		isSheet: true,
		section: [{ svg: atTrueSize(svg, width, height), alternative, width, height }],
		pageSize: sheet.pageSize,
		pageOrientation: 'portrait',
		pageMargins: sheet.margins,
		header: () =>
			words(caption, {
				fontSize: sheetWords,
				lineHeight: 1,
				color: ink,
				margin: [sheet.sidePt, overSheetWords, sheet.sidePt, 0],
			}),
		footer: () => '',
	}
}
/**
 * The control bar and the outline must not be scaled: units of the drawing become points of the
 * page.
 */
const atTrueSize = (svg: string, width: number, height: number): string =>
	svg
		.replace(/(<svg\b[^>]*?)\swidth="[^"]*"/, '$1')
		.replace(/(<svg\b[^>]*?)\sheight="[^"]*"/, '$1')
		.replace(/<svg\b/, `<svg width="${width}" height="${height}"`)
