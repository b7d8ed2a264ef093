/** A version of the thresholds. */
import { protocolRecordSchema } from '../../records/protocol-record.ts'
import { defineKind } from '../kind.ts'
import { protocolFrom1To2 } from '../upgrades/protocol-1-to-2.ts'

export const protocolKind = defineKind({
	name: 'protocol',
	version: 2,
	schema: protocolRecordSchema,
	upgrades: [protocolFrom1To2],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'protocol', many: 'protocols' },
	thingOf: () => 'protocol',
})
