/** The range of each ankle. */
import { sides } from '../fields.ts'
import { ankleMeasures } from '../measures/ankles.table.ts'
import { shapeOf } from '../measures/shape.ts'

export const anklesSchema = sides(shapeOf(ankleMeasures))
