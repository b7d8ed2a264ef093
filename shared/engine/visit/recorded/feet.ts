/** The feet in mm, each measure once or several times. */
import { choice, measure, repeats, sides, text } from '../fields.ts'

const footShape = {
	heelToToeMm: repeats(measure('Heel to toe', 'mm', [90, 400], [150, 340], 1)),
	heelToBallMm: repeats(measure('Heel to ball', 'mm', [60, 300], [105, 255], 1)),
	ballWidthMm: repeats(measure('Ball width', 'mm', [35, 170], [55, 125], 1)),
	ballGirthMm: repeats(measure('Ball girth', 'mm', [90, 400], [150, 300], 1)),
	toeDepthMm: repeats(measure('Toe depth', 'mm', [8, 60], [14, 40], 1)),
	instepHeightMm: repeats(measure('Instep height', 'mm', [25, 130], [40, 95], 1)),
	heelWidthMm: repeats(measure('Heel width', 'mm', [25, 120], [40, 90], 1)),
}
export const feetSchema = sides(footShape).extend({
	stance: choice('Stance', ['standing', 'seated']).optional(),
	sockMm: measure('Sock, added length', 'mm', [0, 15], [0, 6], 1).optional(),
	examiner: text('Examiner', 80).optional(),
})
