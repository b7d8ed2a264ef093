/** The report of a signed visit, as its bytes. */
import { present } from '../../../engine/plain/present.ts'
import { reportRecordSchema } from '../../visits/visit-records.ts'
import { defineKind } from '../kind.ts'

export const reportKind = defineKind({
	name: 'report',
	version: 1,
	schema: reportRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'student', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'report', many: 'reports' },
	// a report is about the visit that it follows
	foundBy: (_, followed) => {
		const visit = followed()
		return visit && present({ about: visit.about, thing: visit.thing })
	},
})
