/** Who is measured, and whom to speak to about a minor. */
import { z } from 'zod'
import { emailAddress } from '../../plain/bounded.ts'
import { choice, isoDate, text } from '../fields.ts'
import { languageTag } from '../languages.ts'
import { sexes } from '../terms.ts'

const email = (title: string) => emailAddress().nullable().optional().meta({ title })

export const playerSchema = z.strictObject({
	givenName: text('Given name', 80),
	familyName: text('Family name', 80),
	/** For paper, where no font of the pages has the letters of the name (names.ts). */
	latinName: z
		.strictObject({
			givenName: text('Given name in Latin letters', 80),
			familyName: text('Family name in Latin letters', 80),
		})
		.optional(),
	birthDate: isoDate('Birth date'),
	sex: choice('Sex', sexes),
	club: text('Club', 120).optional(),
	guardian: z
		.strictObject({
			name: text('Guardian name', 120),
			latinName: text('Guardian name in Latin letters', 120).optional(),
			relation: text('Relation', 60).optional(),
			email: email('Guardian e-mail'),
			phone: text('Guardian phone', 40).optional(),
			/** Where it is another than the player's. */
			preferredLanguage: languageTag('Preferred language of the guardian').optional(),
		})
		.optional(),
	email: email('E-mail'),
	phone: text('Phone', 40).optional(),
	/** In which the player wants things explained; which language the papers are in is another thing. */
	preferredLanguage: languageTag('Preferred language').optional(),
})
export type Player = z.infer<typeof playerSchema>
