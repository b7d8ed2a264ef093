/** The range of each ankle. */
import { choice, measure, repeats, sides } from '../fields.ts'
import { endFeels } from '../terms.ts'

export const anklesSchema = sides({
	lungeCm: repeats(measure('Knee to wall', 'cm', [-10, 30], [0, 20], 1)),
	lungeDeg: repeats(measure('Lunge angle', 'deg', [0, 75], [15, 60], 1)),
	kneeStraightDeg: repeats(measure('Knee straight', 'deg', [-40, 50], [-15, 30], 1)),
	kneeBentDeg: repeats(measure('Knee bent', 'deg', [-40, 60], [-10, 45], 1)),
	endFeel: choice('End feel', endFeels).optional(),
})
