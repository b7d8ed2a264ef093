/** Posture and strength of each foot. */
import { z } from 'zod'
import { choice, count, measure, repeats, sides } from '../fields.ts'
import { firstRays, forefeet } from '../terms.ts'

const fpiItem = count('FPI item', 'score', [-2, 2])
export const postureSchema = sides({
	fpi6: z.array(fpiItem).length(6).optional().meta({ title: 'Foot posture index, six items' }),
	navicularDropMm: repeats(measure('Navicular drop', 'mm', [-10, 40], [0, 20], 1)),
	firstRay: choice('First ray', firstRays).optional(),
	forefoot: choice('Forefoot to rearfoot', forefeet).optional(),
	supinationResistance: choice('Supination resistance', ['low', 'usual', 'high']).optional(),
	firstMtpDegNonWeightBearing: repeats(
		measure('First MTP, off the ground', 'deg', [0, 120], [20, 100], 1),
	),
	jackTestDeg: repeats(measure('First MTP, standing', 'deg', [0, 90], [0, 60], 1)),
	heelRises: count('Heel rises', 'count', [0, 150], [0, 60]).optional(),
})
