/** What of a letterhead stands on every page. */
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { needPrintable } from '../records/on-paper.ts'

/** @param at path of the letterhead in the input. @throws Refusal where no page could be drawn */
export const needPrintableLetterhead = (
	{ name, address, clinician }: Clinic,
	at: '' | 'clinic.' = '',
): void =>
	needPrintable({
		[`${at}name`]: name,
		...Object.fromEntries(address.map((line, row) => [`${at}address.${row}`, line])),
		[`${at}clinician.name`]: clinician.name,
		[`${at}clinician.registration`]: clinician.registration,
	})
