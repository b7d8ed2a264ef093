/** Posture and strength of each foot. */
import { sides } from '../fields.ts'
import { postureMeasures } from '../measures/posture.table.ts'
import { shapeOf } from '../measures/shape.ts'

export const postureSchema = sides(shapeOf(postureMeasures))
