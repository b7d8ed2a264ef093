/**
 * Contrast of the clinic colour on the white paper of the reports, and what the documents make of
 * it.
 */
export { contrastWords, leastRatio, ratioOnWhite } from '../../../shared/engine/report/colour.ts'
