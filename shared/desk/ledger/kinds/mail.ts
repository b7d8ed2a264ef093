/** How mail leaves. */
import { mailSettingsSchema } from '../../outbox/mail-settings.ts'
import { defineKind } from '../kind.ts'

export const mailKind = defineKind({
	name: 'mail',
	version: 1,
	schema: mailSettingsSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['owner'],
	travels: { pack: 'no', home: false, share: false },
	chained: false,
	audit: 'create',
	words: { one: 'mail settings', many: 'mail settings' },
	thingOf: () => 'mail',
})
