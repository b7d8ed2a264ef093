/**
 * What every kind of document shares: its simplest blocks, its letterhead, its subject lines and
 * its signature.
 */

import { present } from '../plain/present.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { fullPaperName } from '../words/names.ts'
import { type Speak, speakFrom } from '../words/speak.ts'
import { dateWords } from '../words/words.ts'
import type { Clinic } from './clinic.ts'
import { textOn } from './colour.ts'
import type { Block, BlockOf, Letterhead, LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import type { Notes } from './notes.ts'

/** A part of a document: its blocks, none where it has nothing to say. */
export type Section = (input: ReportInput, notes: Notes, t: Speak) => Block[]

/** A heading of level 1 where none is given. */
export const heading = (
	text: string,
	more: Omit<BlockOf<'heading'>, 'kind' | 'text'> = {},
): BlockOf<'heading'> => ({
	kind: 'heading',
	text,
	...more,
})
/** A paragraph in ordinary print. */
export const say = (text: string): BlockOf<'text'> => ({ kind: 'text', text })
/** A paragraph in small print. */
export const small = (text: string): BlockOf<'text'> => ({ kind: 'text', tone: 'small', text })
/** The sentences of the documents, in the clinic's own words where it set some. */
export const speakOf = (clinic: Clinic): Speak => speakFrom(clinic.texts)

/** The clinic's letterhead; its colour darkened where text in it could not be read. */
export const letterheadOf = (clinic: Clinic): Letterhead =>
	present({
		clinicName: clinic.name,
		address: clinic.address,
		colour: textOn(clinic.colour),
		phone: clinic.phone || undefined,
		email: clinic.email || undefined,
		logo: clinic.logo,
	})
/** Given name, then family name, in letters that can be printed. */
export const nameOf = ({ player }: Visit): string => fullPaperName(player)
/** The code and the position that the player plays, as far as they are stated. */
export const playedBy = ({ play }: Visit): string[] =>
	[play?.code ? termWords(play.code) : '', play?.position ?? ''].filter(Boolean)
/** The same in words, or that neither is stated. */
export const playsOf = (visit: Visit, t: Speak): string =>
	playedBy(visit).join(', ') || t('common.notStated')
/** Draft, signed or amended, with its version. */
export function statusOf({ draft, version = 1 }: ReportInput, t: Speak): string {
	if (draft) return t('status.draft')
	return version > 1 ? t('status.amended', { version }) : t('status.signed', { version })
}
/** An amended report says so first and lists what changed. */
export function amended(
	{ draft, version = 1, changes = [] }: Pick<ReportInput, 'draft' | 'version' | 'changes'>,
	t: Speak,
): Block[] {
	if (draft || version <= 1) return []
	return [
		{
			kind: 'alert',
			title: t('amended.title'),
			text: t('amended.text', {
				before: version - 1,
				changes: changes.length > 0 ? `${changes.join('; ')}.` : t('amended.none'),
			}),
		},
	]
}
/** Who signed and when; a draft says that nobody did. */
export function signature(
	{
		clinic,
		signedAt,
		signedOn = signedAt?.slice(0, 10),
		visit,
	}: Pick<ReportInput, 'clinic' | 'signedAt' | 'signedOn' | 'visit'>,
	t: Speak,
): Block[] {
	if (signedOn === undefined) return [{ kind: 'text', tone: 'strong', text: t('sign.draft') }]
	const dates = { signed: dateWords(signedOn), measured: dateWords(visit.visitDate) }
	return [
		{
			kind: 'signature',
			name: clinic.clinician.name,
			registration: t('sign.registration', { registration: clinic.clinician.registration }),
			date: visit.visitDate === signedOn ? t('sign.date', dates) : t('sign.dateLate', dates),
		},
	]
}
/** The same in two lines, where a page has little room. */
export const slimSignature = (...given: Parameters<typeof signature>): Block[] =>
	signature(...given).map((block) =>
		block.kind === 'signature' ? { ...block, inline: true } : block,
	)
/** The clinician as the footers name them. */
export const clinicianOf = ({ clinician }: Clinic) => ({
	clinician: clinician.name,
	registration: clinician.registration,
})
/** The frame of a document about one visit. */
export function frame(
	input: ReportInput,
	t: Speak,
): Omit<LwDocument, 'title' | 'kind' | 'subject' | 'blocks' | 'notes'> {
	const { visit, assessment, clinic, signedAt, draft } = input
	const made = { ...clinicianOf(clinic), date: dateWords(visit.visitDate) }
	const footer = draft ? t('page.footerDraft', made) : t('page.footerSigned', made)
	return {
		language: 'en',
		draft,
		letterhead: letterheadOf(clinic),
		running: nameOf(visit),
		footer: `${footer}${assessment.growth ? ` ${t('page.footerGrowth')}` : ''}`,
		createdAt: signedAt ?? `${visit.visitDate}T12:00:00.000Z`,
		paper: clinic.paper ?? 'A4',
	}
}
