/** What the two documents for a club share. */
import { termWords } from '../visit/terms.ts'
import type { Speak } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import { clinicianOf, letterheadOf } from './base.ts'
import type { ClubFields } from './club.ts'
import type { LwDocument } from './document.ts'
import type { ListFrame } from './squad/member.ts'

/** A sole as the trade names it, or that none is stated. */
const soleWords = (sole: string | undefined, t: Speak): string =>
	sole ? termWords(sole) : t('common.notStated')
/** A pair by its sole, and that it is worn for training alone. */
export const pairWords = ({ sole, trainingOnly }: ClubFields['pairs'][number], t: Speak): string =>
	trainingOnly ? `${soleWords(sole, t)}, ${t('coach.trainingOnly')}` : soleWords(sole, t)
/** Whether an insert is worn; in a draft that it is not decided. */
export function insertWords({ insertWorn, open }: ClubFields, t: Speak): string {
	if (open.includes('insert')) return t('coach.notDecided')
	return insertWorn ? t('common.yes') : t('common.no')
}
/** The day of the review, as the guardian's page has it. */
export function reviewWords({ reviewDate, open }: ClubFields, t: Speak): string {
	if (open.includes('review')) return t('coach.notDecided')
	return reviewDate ? dateWords(reviewDate) : t('coach.noDate')
}
/** Who agreed that the club is told, and for how long. */
export function consentWords({ consent: { given, by, until } }: ClubFields, t: Speak): string {
	const date = dateWords(given)
	const who = by ? t(`coach.agreed.${by}`, { date }) : t('coach.agreed', { date })
	return until ? `${who} ${t('coach.agreedUntil', { until: dateWords(until) })}` : who
}
/** The frame of a document for a club. */
export const clubFrame = (
	{ clinic, on, draft }: Pick<ListFrame, 'clinic' | 'on' | 'draft'>,
	t: Speak,
): Pick<
	LwDocument,
	'language' | 'draft' | 'letterhead' | 'footer' | 'createdAt' | 'notes' | 'paper'
> => ({
	language: 'en',
	draft,
	letterhead: letterheadOf(clinic),
	footer: t('page.footerClub', clinicianOf(clinic)),
	createdAt: `${on}T12:00:00.000Z`,
	notes: [],
	paper: clinic.paper ?? 'A4',
})
