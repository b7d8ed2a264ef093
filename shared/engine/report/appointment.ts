/**
 * The sheet for the appointment: the plan of a visit on one page for the clinician. What is held
 * first, the plan in short, three priorities, pairs.
 */
import { ageYears } from '../visit/age.ts'
import { dateWords } from '../words/words.ts'
import { gate } from './appointment/gate.ts'
import { inShort } from './appointment/in-short.ts'
import { byRole, owned } from './appointment/pairs.ts'
import { priorities } from './appointment/priorities.ts'
import { since } from './appointment/since.ts'
import { frame, nameOf, playsOf, type Section, speakOf, statusOf } from './base.ts'
import type { LwDocument } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { preferredInWords } from './language-told.ts'
import { Notes } from './notes.ts'

/** In the order in which a clinician reads them. */
const sections: readonly Section[] = [gate, since, inShort, priorities, owned, byRole]

/** Composes the sheet as data. The same input gives the same document. */
export function appointmentSheet(input: ReportInput): LwDocument {
	const { visit, clinic } = input
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const { birthDate, sex } = visit.player
	const languages = preferredInWords(input, t)
	return {
		...frame(input, t),
		title: t('sheet.title'),
		kind: 'appointment',
		print: 'compact',
		slim: true,
		subject: [
			[t('subject.player'), nameOf(visit)],
			[
				t('subject.born'),
				t('sheet.bornAge', {
					born: dateWords(birthDate),
					age: ageYears(birthDate, visit.visitDate),
					sex,
				}),
			],
			[t('subject.plays'), playsOf(visit, t)],
			...(languages === '' ? [] : [[t('subject.language'), languages] satisfies [string, string]]),
			[t('subject.assessed'), dateWords(visit.visitDate)],
			[t('subject.by'), clinic.clinician.name],
			[t('subject.status'), statusOf(input, t)],
		],
		footer: t('sheet.footer', { clinic: clinic.name, date: dateWords(visit.visitDate) }),
		blocks: sections.flatMap((section) => section(input, notes, t)),
		notes: notes.list,
	}
}
