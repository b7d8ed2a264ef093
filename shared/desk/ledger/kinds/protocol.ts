/** A version of the thresholds. */
import { protocolRecordSchema } from '../../records/protocol-record.ts'
import { defineKind } from '../kind.ts'

export const protocolKind = defineKind({
	name: 'protocol',
	version: 1,
	schema: protocolRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'protocol', many: 'protocols' },
	thingOf: () => 'protocol',
})
