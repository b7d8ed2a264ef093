/** The pages of a signed visit: their bytes, and the documents they were drawn from. */
import { present } from '../../../engine/plain/present.ts'
import { reportRecordSchema } from '../../visits/kept-pages.ts'
import { defineKind } from '../kind.ts'
import { reportFrom1To2 } from '../upgrades/report-1-to-2.ts'

export const reportKind = defineKind({
	name: 'report',
	version: 2,
	schema: reportRecordSchema,
	upgrades: [reportFrom1To2],
	readsPartly: true,
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
