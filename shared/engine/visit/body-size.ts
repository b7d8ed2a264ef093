/** Stature, sitting height and body mass as the rooms read them: recorded once or as repeats. */
import { present } from '../plain/present.ts'
import { meanOf } from './sides.ts'
import type { Visit } from './visit.ts'

/** Of each the mean of its readings; absent where none was taken. */
export interface BodySize {
	statureCm?: number
	sittingHeightCm?: number
	massKg?: number
}
export const bodySize = ({ body }: Pick<Visit, 'body'>): BodySize =>
	present({
		statureCm: meanOf(body?.statureCm),
		sittingHeightCm: meanOf(body?.sittingHeightCm),
		massKg: meanOf(body?.massKg),
	})
