/** A consent of the records as the documents for a club read it. */
import type { Consent } from '../../../shared/desk/records/consent.ts'
import { addDays } from '../../../shared/engine/plain/days.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { ClubConsent } from '../../../shared/engine/report/club.ts'

/** Its last day is included there; the record's is not. */
export const clubConsentOf = (
	consent: Consent | undefined,
	purpose: ClubConsent['purpose'],
): ClubConsent | undefined =>
	consent &&
	present({
		id: consent.consentId,
		purpose,
		decision: consent.decision,
		given: consent.given,
		by: consent.grantor.relation,
		until: consent.expires && addDays(consent.expires, -1),
		withdrawn: consent.withdrawn,
	})
