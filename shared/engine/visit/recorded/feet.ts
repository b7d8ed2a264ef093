/** The feet, each with its own measures, and how they were measured. */
import { sides } from '../fields.ts'
import { captureMeasures, footMeasures } from '../measures/feet.table.ts'
import { shapeOf } from '../measures/shape.ts'

export const feetSchema = sides(shapeOf(footMeasures)).extend(shapeOf(captureMeasures))
