/** When the player comes again. */
import { dayInWords } from '../../../parts/dates.ts'
import { Facts } from './Facts.tsx'
import type { AskedProps } from './stepTypes.ts'

export function ReviewProposal({ assessment }: AskedProps) {
	const { review } = assessment.prescription
	return <Facts facts={[['Review', review && dayInWords(review.date)]]} />
}
