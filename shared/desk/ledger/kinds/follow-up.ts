/** What was heard of a referral, or that nothing was heard yet. */
import { followUpSchema } from '../../recall/referral.ts'
import { defineKind } from '../kind.ts'

export const followUpKind = defineKind({
	name: 'follow-up',
	version: 1,
	schema: followUpSchema,
	upgrades: [],
	// half a note could silence a referral
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'note on a referral', many: 'notes on referrals' },
})
