/**
 * The parts of pdfmake that a page is laid out and drawn by. They are no promise of that library:
 * its version is pinned, and `tests/host/pdf-structure.test.ts` tells when they changed.
 */
import layoutBuilder from 'pdfmake/js/LayoutBuilder.js'
import pageSize from 'pdfmake/js/PageSize.js'
import pdfDocument from 'pdfmake/js/PDFDocument.js'
import renderer from 'pdfmake/js/Renderer.js'
import svgMeasure from 'pdfmake/js/SVGMeasure.js'
import tableLayouts from 'pdfmake/js/tableLayouts.js'

export const LayoutBuilder = layoutBuilder.default
export const PdfDocument = pdfDocument.default
export const Renderer = renderer.default
export const SvgMeasure = svgMeasure.default
export const { normalizePageMargin, normalizePageSize } = pageSize
export const plainLayouts = tableLayouts.tableLayouts
