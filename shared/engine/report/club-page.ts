/** What the two documents for a club share. */
import { termWords } from '../visit/terms.ts'
import type { Speak } from '../words/speak.ts'
import { clinicianOf, letterheadOf } from './base.ts'
import type { Clinic } from './clinic.ts'
import type { ClubFields } from './club.ts'
import type { LwDocument } from './document.ts'

/** A sole as the trade names it, or that none is stated. */
const soleWords = (sole: string | undefined, t: Speak): string =>
	sole ? termWords(sole) : t('common.notStated')
/** A pair by its sole, and that it is worn for training alone. */
export const pairWords = ({ sole, trainingOnly }: ClubFields['pairs'][number], t: Speak): string =>
	trainingOnly ? `${soleWords(sole, t)}, ${t('coach.trainingOnly')}` : soleWords(sole, t)
/** Yes or no in the words of the catalogue. */
export const yesOrNo = (value: boolean, t: Speak): string =>
	value ? t('common.yes') : t('common.no')
/** The frame of a document for a club. @param on ISO date of the document */
export const clubFrame = (
	clinic: Clinic,
	on: string,
	t: Speak,
): Pick<
	LwDocument,
	'language' | 'draft' | 'letterhead' | 'footer' | 'createdAt' | 'notes' | 'paper'
> => ({
	language: 'en',
	draft: false,
	letterhead: letterheadOf(clinic),
	footer: t('page.footerClub', clinicianOf(clinic)),
	createdAt: `${on}T12:00:00.000Z`,
	notes: [],
	paper: clinic.paper ?? 'A4',
})
