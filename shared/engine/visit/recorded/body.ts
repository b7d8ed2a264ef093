/** The body as a whole: size, parents, leg length, maturity, joint laxity. */
import { z } from 'zod'
import { buildMeasures, growthMeasures, sizeMeasures } from '../measures/body.table.ts'
import { shapeOf } from '../measures/shape.ts'

export const bodySchema = z.strictObject({
	...shapeOf(sizeMeasures),
	...shapeOf(growthMeasures),
	...shapeOf(buildMeasures),
})
