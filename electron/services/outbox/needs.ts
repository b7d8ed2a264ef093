import type { Memory } from '../records/memory.ts'

/** What the outbox looks at: items, people on record, letterhead, and what consents rest on. */
export type OutboxNeeds = Pick<
	Memory,
	'clinic' | 'outbox' | 'outreach' | 'people' | 'players' | 'restored'
>
