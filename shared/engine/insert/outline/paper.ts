/** The paper of a sheet at true size, mm. */
import { rounded } from '../../visit/sides.ts'

/** Papers of a clinic, and the larger one for what they cannot hold. */
export const sheetPapers = {
	A4: { own: [210, 297], larger: [297, 420] },
	Letter: { own: [215.9, 279.4], larger: [279.4, 431.8] },
} as const
export type SheetPaper = keyof typeof sheetPapers
/**
 * What a printer needs round the drawing, and the room of the words over it: mm (common practice, no
 * source).
 */
export const sheetEdges = { sideMm: 10, footMm: 10, headMm: 17 } as const

/** The room of a drawing on a sheet, mm. */
export interface Room {
	widthMm: number
	heightMm: number
}
export const roomOn = ([widthMm, heightMm]: readonly [number, number]): Room => ({
	widthMm: rounded(widthMm - 2 * sheetEdges.sideMm, 1),
	heightMm: rounded(heightMm - sheetEdges.headMm - sheetEdges.footMm, 1),
})
