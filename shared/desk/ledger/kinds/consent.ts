/** A consent, or its withdrawal. */
import { consentSchema } from '../../records/consent.ts'
import { defineKind } from '../kind.ts'

export const consentKind = defineKind({
	name: 'consent',
	version: 1,
	schema: consentSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'consent', many: 'consents' },
	thingOf: ({ consentId }) => consentId,
})
