/** What stays after a destruction. */
import { registerLineSchema } from '../../records/retention.ts'
import { defineKind } from '../kind.ts'

export const registerKind = defineKind({
	name: 'register',
	version: 1,
	schema: registerLineSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'destroy',
	words: {
		one: 'line of the register of destruction',
		many: 'lines of the register of destruction',
	},
})
