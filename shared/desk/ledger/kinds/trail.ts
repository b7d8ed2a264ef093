/** The audit rows of a laptop, brought home. The laptop makes it when the file of the way back is written. */
import { awayTrailSchema } from '../../records/away-trail.ts'
import { defineKind } from '../kind.ts'

export const trailKind = defineKind({
	name: 'trail',
	version: 1,
	schema: awayTrailSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: 'program',
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'audit trail of a laptop', many: 'audit trails of laptops' },
})
