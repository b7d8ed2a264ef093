/** Somebody who works here. Each sets their own PIN, so that everybody writes their own entry. */
import { personRecordSchema } from '../../people/person-record.ts'
import { defineKind } from '../kind.ts'

export const personKind = defineKind({
	name: 'person',
	version: 1,
	schema: personRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'student', 'reception', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'entry of a person', many: 'entries of people' },
	thingOf: ({ personId }) => personId,
})
