/**
 * The words of a message: neutral, one recipient, nothing clinical (practice standard 3.7, 5.4).
 */
import type { Clinic } from '../../engine/report/clinic.ts'

/** Words that must never stand in a subject or a file name. */
const clinical =
	/\b(report|ankle|foot|feet|toe|heel|knee|pain|injur\w*|fractur\w*|diagnos\w*|referr\w*|growth|matur\w*|posture|insert|orthos\w*|orthotic\w*|gait|assessment|screening|patient|player|guardian|coach|clot|apophys\w*|tendin\w*|consent)\b/i
/** The first clinical word of a text; undefined where it is neutral. */
export const clinicalWord = (text: string): string | undefined => clinical.exec(text)?.[0]
export const fileNameFor = (number: string): string => `document-${number}.pdf`
/** The clinic's own name stands as it is; nothing else is free. */
export const subjectFor = (number: string, clinic: Pick<Clinic, 'name'>): string =>
	`Document ${number} from ${clinic.name}`
export function bodyFor({
	number,
	recipient,
	clinic,
	withPassword,
	isReminder = false,
}: {
	number: string
	recipient: string
	clinic: Pick<Clinic, 'name' | 'phone' | 'address'>
	withPassword: boolean
	/** it asks to make an appointment, and says no more than that */
	isReminder?: boolean
}): string {
	return [
		`Dear ${recipient},`,
		'',
		...(isReminder
			? [
					'please make an appointment with us: the attached page says for whom and by when.',
					clinic.phone ? `Ring ${clinic.phone}.` : 'An answer to this message is enough.',
				]
			: []),
		`${isReminder ? 'The' : 'the'} attached document has the number ${number}.`,
		...(withPassword
			? ['It opens with a password, which you are given by another way than e-mail.']
			: []),
		'If you did not expect this message, or it is not meant for you: please delete it and tell us.',
		'',
		clinic.name,
		...clinic.address,
		...(clinic.phone ? [clinic.phone] : []),
		'',
	].join('\n')
}
export const testSubject = 'Test message'
export const testBody =
	'This message tests the connection to the mail server. It needs no answer.\n'
