import type { Screening } from '../visit/visit.ts'
import { anyOf, type Tri } from './answers.ts'

/** Pregnant by the general question, or as older visits recorded it with an injury. */
export const isPregnant = ({ pregnant, injury }: Screening): Tri =>
	anyOf(pregnant, injury?.pregnant)
