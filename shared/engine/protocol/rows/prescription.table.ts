import { row } from '../row.ts'

const own = 'own choice, no source'
const everyone = 'all players'
export const prescriptionRows = {
	'prescription.urgentReviewDays': row(1, 'days, working, after emergency care or a medical review of the same day', everyone, own, 'practice', 'choice'),
	'prescription.imagingReviewDays': row(7, 'days after imaging was asked for', everyone, own, 'practice', 'choice'),
	'prescription.letterReviewDays': row(28, 'days after a letter to the doctor', everyone, own, 'practice', 'choice'),
	'prescription.heldReviewDays': row(14, 'days while anything is held without a referral', everyone, own, 'practice', 'choice'),
	'prescription.buyWeeks': row(6, 'weeks by which a pair is bought, where the review is no earlier', everyone, own, 'practice', 'choice'),
	'prescription.insertReviewWeeks': row(6, 'weeks with a new insert', everyone, own, 'practice', 'choice'),
	'prescription.mostQuestions': row(12, 'questions', everyone, own, 'practice', 'choice'),
	'prescription.steadyShare': row(0.9, 'share of the trials with the same proposal; from here steady', everyone, own, 'practice', 'choice'),
	'prescription.nearLimitShare': row(0.65, 'share of the trials with the same proposal; from here near a limit', everyone, own, 'practice', 'choice'),
} as const
