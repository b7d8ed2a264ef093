/** The inside length to look for, mm; absent where there is none, or it was set aside. */
import type { KeptAssessment, Span } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'

export interface SettledSize {
	boots?: Span
	trainers?: Span
}
/** None by a foot that was measured swollen or hurt: its size stays on record. */
export const sizeToBuyBy = ({
	insideLengthMm,
	trainers,
	usableForBuying,
}: KeptAssessment['sizing']): SettledSize =>
	usableForBuying === false
		? {}
		: present({ boots: insideLengthMm, trainers: trainers?.insideLengthMm })
