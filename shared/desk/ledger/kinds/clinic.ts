/** The letterhead and the clinician who signs. */
import { clinicRecordSchema } from '../../../engine/report/clinic.ts'
import { defineKind } from '../kind.ts'

export const clinicKind = defineKind({
	name: 'clinic',
	version: 1,
	schema: clinicRecordSchema,
	upgrades: [],
	readsPartly: true,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'letterhead', many: 'letterheads' },
	thingOf: () => 'clinic',
})
