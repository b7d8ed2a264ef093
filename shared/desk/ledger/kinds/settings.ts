/** The settings of the records. */
import { recordSettingsSchema } from '../../records/settings.ts'
import { defineKind } from '../kind.ts'

export const settingsKind = defineKind({
	name: 'settings',
	version: 1,
	schema: recordSettingsSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'settings of the records', many: 'settings of the records' },
	thingOf: () => 'settings',
})
